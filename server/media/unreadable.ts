import type { ClipFault } from '../../shared/clips/facts.ts';

/** A clip that can't be read, with the reason as people are told: "it is empty". */
export class Unreadable extends Error {
  readonly fault: ClipFault;

  constructor(why: string, fault: ClipFault = 'damaged') {
    super(why);
    this.fault = fault;
  }
}
