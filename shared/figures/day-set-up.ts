/** What has to be built for a shot: rig, lights and subject. */
import type { SetUp } from '../day/set-up.ts';
import { isKnown } from '../plan/field.ts';
import type { Bench } from './bench.ts';

export function setUpOf(bench: Bench): SetUp {
  const { rigName, parts, lights, filters, subject, carriers } = bench;
  return {
    shot: bench.shot,
    rig: rigName ?? null,
    parts: [
      ...(parts.known ? parts.value.map(({ name }) => name) : []),
      ...(filters.known ? filters.value.map(({ name }) => name) : []),
      ...[carriers.head, carriers.rail, carriers.stand].flatMap((carrier) => carrier?.name ?? []),
    ],
    lights: lights.known
      ? lights.value.map(({ name, fields, dimmedStops, gels, setColour }) => ({
          name,
          place: JSON.stringify([
            isKnown(fields.at)
              ? Object.values(fields.at.value).map((one) => isKnown(one) && one.value)
              : null,
            dimmedStops.known ? dimmedStops.value : null,
            gels,
            setColour && isKnown(setColour) ? setColour.value : null,
            isKnown(fields.polarised) && fields.polarised.value !== 'none'
              ? fields.polarised.value
              : null,
          ]),
        }))
      : [],
    subject: subject?.name ?? null,
    body: bench.body?.name ?? null,
    isLapse: bench.timeLapse !== null,
  };
}
