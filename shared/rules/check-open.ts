import { message } from '../words/message.ts';
import { openChecks } from './checks-called-for.ts';
import type { ShotRule } from './shot-rule.ts';

interface Facts {
  readonly checks: readonly string[];
}

export const checkOpen: ShotRule<Facts> = {
  name: 'check-open',
  severity: 'warning',
  docs: {
    when: 'clips of a shot exist while checks of it are still open.',
    why: 'Either nobody looked, and the clips need looking at, or it was done and not written down.',
    remedy:
      'Look at the clips for what the check was to prevent, and write down who did it and when.',
    bad: [
      {
        says: 'clips, and focus never confirmed',
        change: {
          'shots/frost/preflight': '{ focus-at-full-size: open }',
          clips: '{ frost: [{ file: media/0001.mp4 }] }',
        },
      },
    ],
    good: [
      {
        says: 'done before the clips',
        change: {
          'preflight/every-shot': '[focus-at-full-size]',
          'preflight/once': '{ card-and-battery: { done: 2027-03-02 } }',
          'shots/frost/preflight': '{ focus-at-full-size: { done: 2027-03-02, by: op } }',
          'shots/frost/allow': '{ check-missing: { because: a test clip } }',
          clips: '{ frost: [{ file: media/0001.mp4 }] }',
        },
      },
    ],
  },
  check({ bench }) {
    if (!bench.hasClips) return [];
    const open = openChecks(bench);
    if (open.length === 0) return [];
    const at = bench.fields.preflight.at;
    return [{ at: { ...at, part: 'key' as const }, facts: { checks: open } }];
  },
  words: ({ checks }) => ({
    what:
      checks.length === 1
        ? message`There are clips, and a check is open: ${checks.join()}.`
        : message`There are clips, and ${checks.length} checks are open: ${checks.slice(0, 2).join(', ')}${checks.length > 2 ? message` and ${checks.length - 2} more` : ''}.`,
    ...(checks.length > 2 && { why: message`All of them: ${checks.join(', ')}.` }),
  }),
  numbers: ({ checks }) => ({ open: checks.length }),
};
