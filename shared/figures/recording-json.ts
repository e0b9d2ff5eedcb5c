/** What a plan records, with the names of the JSON contract. */
import { message } from '../words/message.ts';
import type { BodySums } from './recording-sums.ts';

/** The figures of a body. */
export interface BodySumsJson {
  /** All takes, s; null where a take's length isn't known. */
  readonly recordedS: number | null;
  /** With the settling time before each take. */
  readonly withSettlingS: number | null;
  readonly recordedBytes: number | null;
  /** The sums of the known takes. */
  readonly leastRecordedS: number;
  readonly leastRecordedBytes: number;
  /** By the capacity of one. */
  readonly cardBytes: number | null;
  readonly batteryS: number | null;
  readonly cards: number | null;
  readonly batteries: number | null;
}

export interface BodyRecordingJson extends BodySumsJson {
  readonly body: string;
  /** In the order of the plan. */
  readonly shots: readonly string[];
  readonly notKnown: Readonly<Record<string, string>>;
}

export const recordingJson = (sums: readonly BodySums[]): readonly BodyRecordingJson[] =>
  sums.map(bodyJson);

function bodyJson(sums: BodySums): BodyRecordingJson {
  const { body, shots, recordedS, withSettlingS, bytes, cards, batteries } = sums;
  const notKnown: Record<string, string> = {};
  const unless = <T>(
    why: string | null,
    keys: readonly (keyof BodySumsJson)[],
    value: T,
  ): T | null => {
    if (why === null) return value;
    for (const key of keys) notKnown[key] = why;
    return null;
  };
  const lacks = (names: readonly string[], what: string): string | null =>
    names.length === 0 ? null : message`${what} of ${names.join(', ')} is unknown`;
  const noTime = lacks(sums.untimed, message`length or number of takes`);
  const noBytes = lacks(sums.unweighed, message`recorded data per take`);
  const noPower = lacks(sums.unpowered, message`battery use`);
  const noCard = body.card ? null : message`needs \`card\` of ${body.name}`;
  const noBattery = body.battery ? null : message`needs \`battery\` of ${body.name}`;
  const tooMuch = (count: number | null, one: string): string | null =>
    count === null ? message`one take is more than one ${one} holds` : null;
  return {
    body: body.name,
    shots: shots.map(({ shot }) => shot),
    recordedS: unless(noTime, ['recordedS'], recordedS),
    withSettlingS: unless(noTime, ['withSettlingS'], withSettlingS),
    recordedBytes: unless(noBytes, ['recordedBytes'], bytes),
    leastRecordedS: recordedS,
    leastRecordedBytes: bytes,
    cardBytes: unless(noCard, ['cardBytes'], body.card?.value ?? null),
    batteryS: unless(noBattery, ['batteryS'], body.battery?.value ?? null),
    cards: unless(noCard ?? noBytes ?? tooMuch(cards, 'card'), ['cards'], cards),
    batteries: unless(
      noBattery ?? noTime ?? noPower ?? tooMuch(batteries, 'battery'),
      ['batteries'],
      batteries,
    ),
    notKnown,
  };
}
