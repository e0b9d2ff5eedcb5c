/** The part of smpte-timecode that tests use; the package has no types of its own. */
declare module 'smpte-timecode' {
  export default class Timecode {
    constructor(
      frame: number | string,
      rate: number | readonly [n: number, d: number],
      dropFrame: boolean,
    );
    readonly frameCount: number;
    readonly hours: number;
    readonly minutes: number;
    readonly seconds: number;
    readonly frames: number;
    add(frames: number): this;
  }
}
