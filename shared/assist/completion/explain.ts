/** What an offer is for and what it would do, made when somebody looks at it. */

import type { About } from '../../api/completions.ts';
import { UncertainShot } from '../../figures/uncertain.ts';
import { keysOf } from '../../plan/entry-id.ts';
import { SHAPES } from '../../plan/generated/shapes.ts';
import type { Shot } from '../../plan/generated/types.ts';
import type { FileId } from '../../plan/place.ts';
import type { Ref } from '../../plan/ref.ts';
import { KNOWN_CHECKS } from '../../rules/checks-called-for.ts';
import { ruleNamed } from '../../rules/registry.ts';
import { inLanguage, message } from '../../words/message.ts';
import type { Context } from '../../workspace/context.ts';
import { findInShot } from '../../workspace/shot-findings.ts';
import { keyHover } from '../hover/key.ts';
import { laidOut } from '../hover/layout.ts';
import { paragraphs, plain } from '../hover/markdown.ts';
import { nameHover } from '../hover/name.ts';
import { ruleHover } from '../hover/rule.ts';
import { Sure, withFoot } from '../hover/sure.ts';
import { SETTING_HOVERS } from '../hover/value.ts';
import { tryText } from './settings.ts';
import { TrialShot } from './trial-shot.ts';
import { whereIs } from './where.ts';

/** Markdown; null where there is no more to say. */
export function explain(context: Context, file: FileId, about: About): string | null {
  switch (about.kind) {
    case 'key': {
      const keyShape = SHAPES[about.of]?.keys[about.key];
      return keyShape
        ? keyHover({ key: about.key, keyShape, of: about.of, shape: keyShape.shape })
        : null;
    }
    case 'name':
      return laidOut(nameHover(context, file, about.groups, about.name) ?? '') || null;
    case 'value':
      return valueDocs(context, file, about);
    case 'rule':
      return ruleHover(about.name);
    case 'check': {
      const check = KNOWN_CHECKS.find(({ name }) => name === about.name);
      return check ? `${inLanguage(check.what)}.` : null;
    }
    case 'kind':
      return SHAPES[about.of] ? inLanguage(SHAPES[about.of].description) : null;
    case 'file':
      return message`**${plain(about.path)}** brings in its kit, rigs, lights and subjects.`;
  }
}

/** Findings that are named; of more it is enough to know that there are. */
const MOST_FINDINGS = 4;

function valueDocs(
  context: Context,
  file: FileId,
  { entry, path, text }: About & { kind: 'value' },
): string | null {
  const where = whereIs(context, file, [...keysOf(entry), ...path]);
  const key = path[0] as keyof Shot;
  const shot = context.analysis.isShot(entry) ? TrialShot.ofShot(context, file, entry) : null;
  const tried =
    shot && path.length === 1
      ? key === 'record' || key === 'rig'
        ? shot.with(key, text as Ref)
        : tryText(shot, key, text)
      : null;
  const sure = tried && new Sure(new UncertainShot(tried.now), tried.say);
  const hover = sure && SETTING_HOVERS[key]?.({ ...tried.now, say: tried.say, sure });
  const { title, description } = where?.meaning?.keyShape ?? { title: '', description: '' };
  return paragraphs(
    tried && findingsWith(tried),
    (hover && laidOut(withFoot(hover, sure))) ||
      (title && `${inLanguage(title)}: **${plain(text)}**`),
    !hover && inLanguage(description),
  );
}

/** What the rules would find in the shot, worst first. */
function findingsWith(tried: TrialShot): string {
  const { findings } = findInShot(tried.now, tried.reader.plan('allow'));
  const heard = findings.filter(({ severity }) => severity === 'error' || severity === 'warning');
  const said = heard.slice(0, MOST_FINDINGS).map(({ rule, severity, facts }) => {
    const words = ruleNamed(rule)?.words(facts, tried.say).what ?? rule;
    return `- ${severity}: ${plain(words)}`;
  });
  return said.length === 0 ? '' : message`With it:\n\n${said.join('\n')}`;
}
