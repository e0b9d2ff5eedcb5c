/** The day in the names of the JSON contract: times of the day as hh:mm, lengths in seconds. */
import type { Reasons } from './reasons.ts';

export interface DayShotJson {
  readonly shot: string;
  readonly priority: number;
  /** When building begins, when the takes do, and when they are done; null: the day has no start. */
  readonly buildFrom: string | null;
  readonly begins: string | null;
  readonly ends: string | null;
  /** The same in seconds from the start of the day. */
  readonly buildFromS: number;
  readonly beginsS: number;
  readonly endsS: number;
  /** What is built before it. */
  readonly rebuilt: {
    readonly rigs: number;
    readonly lights: number;
    readonly subjects: number;
  };
  readonly rebuildS: number;
  /** When building is done, s from the start of the day. */
  readonly builtS: number;
  /** Breaks from `buildFrom` to `ends`. */
  readonly breakS: number;
  /** For its hour, or for its subject to be ready. */
  readonly waitS: number;
  /** Takes, with settling and the making of films; null: not known. */
  readonly workS: number | null;
  /** After its `start`. */
  readonly lateS: number;
  /** Time-lapses that run by themselves meanwhile. */
  readonly beside: readonly string[];
  readonly notKnown: Reasons;
}

export interface DayJson {
  /** ISO 8601: 2027-03-02. */
  readonly date: string | null;
  readonly place: string | null;
  readonly start: string | null;
  readonly end: string | null;
  readonly availableS: number | null;
  /** From the start to the end of the last take. */
  readonly neededS: number | null;
  /** The same as far as lengths are known; with everything that is known roughly or assumed going fast, or slowly. */
  readonly countedS: number | null;
  readonly leastCountedS: number | null;
  readonly mostCountedS: number | null;
  /** How much too long it is; negative: what is left. */
  readonly overS: number | null;
  readonly rebuildingS: number | null;
  readonly waitingS: number | null;
  /** On the clock and in seconds from the start of the day; null: the day has no start. */
  readonly breaks:
    | readonly {
        readonly from: string;
        readonly to: string;
        readonly fromS: number;
        readonly toS: number;
      }[]
    | null;
  /** Whether no other order is better. */
  readonly orderIsExact: boolean | null;
  /** Shots to leave out so that the others end in time; empty: none, or that doesn't help. */
  readonly drop: readonly string[] | null;
  /** Left for another day by the plan. */
  readonly notToday: readonly string[] | null;
  /** Shots that can't be read or whose takes have no length. */
  readonly notCounted: readonly string[] | null;
  /** In the order proposed. */
  readonly shots: readonly DayShotJson[];
  readonly notKnown: Reasons;
}
