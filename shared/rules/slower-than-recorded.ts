import { setTo } from '../plan/fixes.ts';
import { equal } from '../quantity/rational.ts';
import { toNumber } from '../timeline/exact.ts';
import { slowest } from '../timeline/speed.ts';
import { message } from '../words/message.ts';
import { at50, cutsIn, rateText, speedText, valueOrName, withCuts } from './edit-rule.ts';
import type { PlanRule } from './plan-rule.ts';
import type { Observation } from './rule.ts';

interface Facts {
  readonly cut: string;
  readonly shot: string;
  readonly slowest: number;
  readonly from: number;
  readonly to: number;
  readonly honest: number;
  readonly recorded: string;
  /** At which the body's clip plays; null: as it was recorded. */
  readonly plays: string | null;
  readonly delivered: string;
}

export const slowerThanRecorded: PlanRule<Facts> = {
  name: 'slower-than-recorded',
  severity: 'warning',
  docs: {
    when: 'a cut, or part of its speed ramp, is slower than the recorded frame rate allows.',
    why: 'The slowest speed without repeated frames is delivery frame rate ÷ recorded frame rate; at that speed each recorded frame is shown once. Slower, frames are repeated or interpolated, and movement stutters or blurs.',
    remedy: 'Record at a higher frame rate, or run the cut no slower than that speed.',
    bad: [
      {
        says: 'half speed from 25 fps',
        change: withCuts({
          one: 'shot: frost, duration: 4 s',
          two: 'shot: skin, duration: 4 s, speed: 50 %',
        }),
      },
      {
        says: 'a ramp that ends too slow',
        change: withCuts({
          one: 'shot: frost, duration: 4 s',
          two: 'shot: skin, duration: 4 s, speed: 100 to 40 %',
        }),
      },
    ],
    good: [
      {
        says: 'half speed from 50 fps',
        change: {
          ...at50('skin'),
          ...withCuts({ two: 'shot: skin, duration: 4 s, speed: 50 %' }),
        },
      },
    ],
  },
  check: (view) =>
    cutsIn(view).flatMap(({ edit, cut }): Observation<Facts>[] => {
      const { repeatsFrames, speed, slowestWithoutRepeats, footage } = cut;
      if (!repeatsFrames.known || !repeatsFrames.value) return [];
      if (!speed.known || !slowestWithoutRepeats.known) return [];
      if (!footage?.setting || !edit.rate.known) return [];
      return [
        {
          at: valueOrName(cut, cut.fields?.speed),
          facts: {
            cut: cut.name,
            shot: footage.shot,
            slowest: toNumber(slowest(speed.value)),
            from: toNumber(speed.value.from),
            to: toNumber(speed.value.to),
            honest: toNumber(slowestWithoutRepeats.value),
            recorded: rateText(footage.setting.recorded),
            plays: equal(footage.setting.rate, footage.setting.recorded)
              ? null
              : rateText(footage.setting.rate),
            delivered: rateText(edit.rate.value),
          },
          related: [{ at: footage.recordAt, words: message`\`record\` of ${footage.shot}` }],
        },
      ];
    }),
  words: ({ cut, shot, slowest: at, honest, recorded, plays, delivered }, say) => ({
    what: message`${cut} runs at ${say.percent(at)}; ${shot} has enough frames for ${say.percent(honest)} or faster.`,
    why:
      plays === null
        ? message`It is recorded at ${recorded} and delivered at ${delivered}. Slower than that, frames are repeated or interpolated.`
        : message`Its clip plays at ${plays}, already slowed from ${recorded}, and is delivered at ${delivered}. Slower than that, frames are repeated or interpolated.`,
  }),
  size: ({ slowest: at, honest }) => ({ kind: 'percent', value: honest / at - 1 }),
  numbers: ({ slowest: at, honest }) => ({ slowestSpeed: at, slowestSpeedWithoutRepeats: honest }),
  fixes({ at, facts }, { edit }) {
    const cut = edit?.cuts.find(({ name }) => name === facts.cut);
    const { footage } = cut ?? {};
    const delivered = edit?.rate.known ? edit.rate.value : undefined;
    if (!cut?.fields || !footage?.setting || !delivered) return [];
    const { width, height } = footage.setting;
    // A mode that the body conforms shows another real speed, which nobody chose.
    const faster = footage.settings.filter(
      ({ rate, recorded, ...size }) =>
        equal(rate, recorded) &&
        delivered.n / delivered.d / (rate.n / rate.d) <= facts.slowest * 1.002 &&
        size.width >= width &&
        size.height >= height,
    );
    const honest = Math.ceil(facts.honest * 1000 - 1e-6) / 1000;
    const text = speedText(Math.max(honest, facts.from), Math.max(honest, facts.to));
    return [
      ...faster
        .slice(0, 2)
        .map(({ name, rate }) =>
          setTo(
            message`Record ${footage.shot} with ${name} (${rateText(rate)})`,
            footage.recordAt,
            name,
          ),
        ),
      setTo(
        message`Set the speed to ${text.replace(' %', '%')}`,
        cut.fields.speed.state === 'known' ? at : cut.fields.speed.at,
        text,
        message`movement is faster and uses more footage`,
      ),
    ];
  },
};
