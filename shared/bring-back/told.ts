/** What is told of bringing a day back: what was done, and what was left. */
export class Told {
  readonly done: string[] = [];
  readonly left: string[] = [];

  bring(line: string): void {
    this.done.push(line);
  }

  leave(line: string): void {
    this.left.push(line);
  }
}
