import { explainRule, listRules } from '../../shared/report/explain.ts';
import { later, message } from '../../shared/words/message.ts';
import { NOTHING_FOUND } from '../exit-status.ts';
import type { Command } from './command.ts';
import { nearest, parseOptions, WrongUse } from './options.ts';

export const explain: Command = {
  name: 'explain',
  usage: ['lamella explain [RULE]'],
  about: later`Says when a rule fires, why it matters and what to do; without a rule, lists them all.`,
  options: [],
  async run(args, { terminal, rules }) {
    const { rest } = parseOptions(args, {});
    const [name] = rest;
    if (rest.length > 1)
      throw new WrongUse(message`explain takes one rule, but got ${rest.length}.`);
    if (name === undefined) {
      terminal.out(listRules(rules, terminal.colour));
      return NOTHING_FOUND;
    }
    const rule = rules.find((each) => each.name === name);
    if (!rule) {
      const near = nearest(
        name,
        rules.map((each) => each.name),
      );
      throw new WrongUse(
        near
          ? message`There is no rule "${name}". Did you mean ${near}?`
          : message`There is no rule "${name}". \`lamella explain\` lists them.`,
      );
    }
    terminal.out(explainRule(rule, terminal.colour));
    return NOTHING_FOUND;
  },
};
