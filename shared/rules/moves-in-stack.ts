import { natureOf } from '../figures/subject-kinds.ts';
import { smearPx } from '../optics/smear.ts';
import { ifKnown } from '../plan/field.ts';
import { removal } from '../plan/fixes.ts';
import type { Place } from '../plan/place.ts';
import { message } from '../words/message.ts';
import { relatedTo, type ShotRule, type ShotView } from './shot-rule.ts';

/** Pixels of the coarser kind over which the subject may move from the first frame to the last. */
const SOFT_PX = 1;

interface Facts {
  readonly of:
    | { readonly kind: 'liquid' }
    | { readonly kind: 'move' }
    | { readonly kind: 'flow'; readonly px: number; readonly seconds: number };
  /** null: not named. */
  readonly subject: string | null;
}

export const movesInStack: ShotRule<Facts> = {
  name: 'moves-in-stack',
  severity: 'warning',
  docs: {
    when: 'the subject of a focus stack is a liquid, or moves by more than one pixel meanwhile, or the shot has a move.',
    why: 'The frames of a stack are put together as if they were taken at once. What moves between them is doubled or smeared. Films and bubbles drain and swing all the time.',
    remedy: 'Stack only what keeps still. Else stop down, frame wider or pull focus.',
    bad: [
      {
        says: 'a film',
        change: {
          'shots/skin/stack': '{ with: rail, settle: 2 s }',
          'shots/skin/take': null,
          'preflight/once/stack-ends-checked': 'open',
        },
      },
      {
        says: 'frost that creeps',
        change: {
          'shots/frost/stack': '{ with: rail, settle: 2 s }',
          'shots/frost/subject-speed': '0.1 mm/s',
          'preflight/once/stack-ends-checked': 'open',
        },
      },
    ],
    good: [
      {
        says: 'frost that keeps still',
        change: {
          'shots/frost/stack': '{ with: rail, settle: 2 s }',
          'preflight/once/stack-ends-checked': 'open',
        },
      },
    ],
  },
  check(view) {
    const { bench } = view;
    if (!bench.stack) return [];
    const subject = bench.subject?.name ?? null;
    const { at } = bench.stack;
    if (natureOf(bench.subject)?.isLiquid === true)
      return [{ at: key(at), facts: { of: { kind: 'liquid' }, subject } }];
    if (bench.fields.move.state === 'known')
      return [{ at: key(bench.fields.move.at), facts: { of: { kind: 'move' }, subject } }];
    return flowing(view).map((found) => ({ ...found, facts: { ...found.facts, subject } }));
  },
  words: ({ of, subject }, say) => {
    const named = subject ?? message`the subject`;
    switch (of.kind) {
      case 'liquid':
        return {
          what: message`A focus stack needs a still subject; ${named} is a liquid.`,
          why: message`It moves from frame to frame, so the frames don't fit together.`,
        };
      case 'move':
        return {
          what: message`A focus stack needs a still camera; this shot has a move.`,
          why: message`Frames from different places don't fit together.`,
        };
      default:
        return {
          what: message`${named} moves ${say.pixels(of.px)} while the focus stack is made.`,
          why: message`The stack takes ${say.seconds(of.seconds)}. Frames fit together within one pixel.`,
        };
    }
  },
  size: ({ of }) => (of.kind === 'flow' ? { kind: 'pixels', value: of.px } : undefined),
  numbers: ({ of }): Readonly<Record<string, number>> =>
    of.kind === 'flow' ? { driftPx: of.px, stackTimeS: of.seconds } : {},
  fixes({ facts: { of } }, { bench }) {
    if (of.kind === 'move') return [removal(message`Remove the move`, bench.fields.move.at)];
    return of.kind === 'liquid' && bench.stack
      ? [removal(message`Remove the focus stack`, bench.stack.at)]
      : [];
  },
};

const key = (at: Place): Place => ({ ...at, part: 'key' });

function flowing({ bench, figures }: ShotView) {
  const flow = bench.fields['subject-speed'];
  const { stackTimeS, magnification, pixelUm } = figures;
  const speedMmPerS = ifKnown(flow);
  if (speedMmPerS === undefined || !stackTimeS.known || !magnification.known || !pixelUm.known)
    return [];
  const px = smearPx({
    speedMmPerS,
    timeS: stackTimeS.value,
    magnification: magnification.value,
    pixelUm: pixelUm.value,
  });
  if (px <= SOFT_PX) return [];
  const { at } = flow;
  return [
    {
      at,
      facts: { of: { kind: 'flow', px, seconds: stackTimeS.value } as const },
      related: () => relatedTo(at, stackTimeS),
    },
  ];
}
