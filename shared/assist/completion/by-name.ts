/** Keys of a mapping by name: new entries, names that it refers to, rules, checks. */

import type { Shape } from '../../plan/shape.ts';
import { ALL_RULES } from '../../rules/registry.ts';
import { SEVERITIES } from '../../rules/rule.ts';
import { message } from '../../words/message.ts';
import { findInShot } from '../../workspace/shot-findings.ts';
import { checksFor } from './checks.ts';
import { entryKey, type KeyProposal } from './keys.ts';
import { named } from './named.ts';
import { fillable } from './pieces.ts';
import type { Where } from './where.ts';

export function namesFor(
  where: Where,
  { item, names }: Shape & { kind: 'map' },
  taken: readonly string[],
  flow: boolean,
): readonly KeyProposal[] {
  const key = where.meaning?.key ?? '';
  if (key === 'allow' || key === 'severity') return rulesFor(where, key, taken);
  if (key === 'preflight' || key === 'once')
    return checksFor(where, taken).map(
      ({ text, detail, rank, about }): KeyProposal => ({
        key: text,
        detail,
        rank,
        kind: 'check',
        pieces: fillable(`${text}: open`),
        choice: false,
        about,
      }),
    );
  if (names) {
    const text = item.kind === 'list' ? listOfClips(flow) : '{ dimmed: 1 stop }';
    return named(where, names)
      .filter((one) => !taken.includes(one.text))
      .map(
        ({ text: name, detail, rank, about }): KeyProposal => ({
          key: name,
          detail,
          rank,
          kind: 'name',
          pieces: fillable(`${name}:${text.startsWith('\n') ? '' : ' '}${text}`),
          choice: false,
          about,
        }),
      );
  }
  return item.kind === 'record' ? entryKey(where, item.of, taken, flow) : [];
}

const listOfClips = (flow: boolean): string =>
  flow
    ? '[{ file: media/0001.mp4, verdict: keep }]'
    : '\n  - { file: media/0001.mp4, verdict: keep }';

/** Rules that find something here come first. */
function rulesFor(where: Where, key: string, taken: readonly string[]): KeyProposal[] {
  const { context, file, shot } = where;
  // What is accepted is being written: the shot's own findings are those without it.
  const found = shot
    ? findInShot(shot.without('allow').now, shot.reader.plan('allow')).findings
    : context.analysis.findings(file);
  const firing = new Map(found.map(({ rule, severity }) => [rule, SEVERITIES.indexOf(severity)]));
  return ALL_RULES.filter(({ name }) => !taken.includes(name)).map((rule, index) => ({
    key: rule.name,
    detail: firing.has(rule.name) ? message`${rule.severity} · found here` : rule.severity,
    rank: index + 100 * (firing.get(rule.name) ?? SEVERITIES.length),
    kind: 'word',
    pieces: fillable(
      key === 'allow'
        ? `${rule.name}: { because: it is wanted }`
        : `${rule.name}: ${rule.severity}`,
    ),
    choice: key === 'severity',
    about: { kind: 'rule', name: rule.name },
  }));
}
