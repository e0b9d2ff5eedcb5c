/** What is told of bringing a day back: what was done, what only the plan changed, and what was left. */
export class Told {
  readonly done: string[] = [];
  readonly kept: string[] = [];
  readonly left: string[] = [];

  bring(line: string): void {
    this.done.push(line);
  }

  keep(line: string): void {
    this.kept.push(line);
  }

  leave(line: string): void {
    this.left.push(line);
  }
}
