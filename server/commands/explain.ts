import { assumptionsText } from '../../shared/report/assumptions.ts';
import { explainRule, listRules } from '../../shared/report/explain.ts';
import { later, message } from '../../shared/words/message.ts';
import { NOTHING_FOUND } from '../exit-status.ts';
import type { Command } from './command.ts';
import { nearest, WrongUse } from './options.ts';

/** No rule has this name: names of rules say what is wrong. */
const ASSUMPTIONS = 'assumptions';

export const explain: Command = {
  name: 'explain',
  usage: ['lamella explain [RULE]', `lamella explain ${ASSUMPTIONS}`],
  about: later`Explains a rule: when it is reported, why it matters and what to do. Without a rule, lists all rules. \`assumptions\` lists what is assumed of values that a plan leaves out.`,
  options: {},
  async run({ rest }, { terminal, rules }) {
    const [name] = rest;
    if (rest.length > 1)
      throw new WrongUse(message`explain takes one rule, but got ${rest.length}.`);
    if (name === ASSUMPTIONS) {
      terminal.out(assumptionsText(terminal.colour));
      return NOTHING_FOUND;
    }
    const rule = rules.find((each) => each.name === name);
    if (name !== undefined && !rule) {
      const near = nearest(name, [...rules.map((each) => each.name), ASSUMPTIONS]);
      throw new WrongUse(
        near
          ? message`There is no rule "${name}". Did you mean ${near}?`
          : message`There is no rule "${name}". \`lamella explain\` lists them.`,
      );
    }
    terminal.out(rule ? explainRule(rule, terminal.colour) : listRules(rules, terminal.colour));
    return NOTHING_FOUND;
  },
};
