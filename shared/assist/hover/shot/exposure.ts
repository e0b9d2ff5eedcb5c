/** How the exposure comes out, and what it would take to be right. */
import { ifKnown } from '../../../plan/field.ts';
import { isoRangeOf, neededIso } from '../../../rules/needed-iso.ts';
import { exposureError } from '../../../say/figures.ts';
import { message } from '../../../words/message.ts';
import { figureLine, last, line, paragraphs, plain, table } from '../markdown.ts';
import { glassAround } from './aperture.ts';
import type { SaidShot } from './view.ts';

export function exposureHover({ bench, figures, say, sure }: SaidShot): string {
  const { iso, isoLimits, body, lights } = bench;
  const { exposureErrorStops: error, isoNeeded, effectiveFNumber, shutterSeconds } = figures;
  const auto = iso.known && iso.value === 'auto';
  const { lowest, highest, cleanTo } = isoLimits;
  const effectiveAround = (): string =>
    sure.behind(
      message`effective f-number`,
      (of) => of.effectiveFNumber,
      (n) => say.fNumber(n),
    );
  return paragraphs(
    table([
      !auto &&
        figureLine(
          message`exposure`,
          error,
          (stops) => `**${exposureError(stops, say)}**${sure.exposure(message`exposure`)}`,
        ),
      figureLine(
        message`ISO needed`,
        isoNeeded,
        (needed) => `${bold(neededIso(needed, isoRangeOf(bench), say))}${isoAround(say, sure)}`,
      ),
      auto && line(message`set`, message`by the camera (auto)`),
      figureLine(
        message`effective f-number`,
        effectiveFNumber,
        (n) => `${say.fNumber(n)}${effectiveAround()}`,
      ),
      figureLine(message`shutter`, shutterSeconds, (s) => say.shutter(s)),
      figureLine(
        message`glass and filters`,
        figures.glassLossStops,
        (stops) => message`${say.stops(stops)}${glassAround(say, sure)} lost`,
      ),
      body &&
        lowest.known &&
        highest.known &&
        line(
          plain(body.name),
          message`ISO ${say.number(lowest.value)} to ${say.number(highest.value)}${cleanTo.known ? message`, usable to ${say.number(cleanTo.value)}` : ''}`,
        ),
      ...(lights.known
        ? lights.value.map((light) => line(plain(light.name), givenBy(light.fields)))
        : []),
    ]),
    error.known &&
      last(
        message`Formula: error = EV of the light − (log2(N_eff²/t) − log2(ISO/100) + stops lost), APEX.${
          lights.known && lights.value.some(({ fields }) => isByIlluminance(fields))
            ? message` EV of an illuminance E in lx = log2(E·100/250).`
            : ''
        }`,
      ),
  );
}

/** What is round the ISO needed, in speeds, whether the body has them or not. */
export const isoAround = (say: SaidShot['say'], sure: SaidShot['sure']): string =>
  sure.behind(
    message`ISO needed`,
    (of) => of.isoNeeded,
    (iso) => say.iso(iso),
  );

const bold = (text: string): string => `**${text}**`;

type LightFields = Extract<SaidShot['bench']['lights'], { known: true }>['value'][number]['fields'];

const isByIlluminance = ({ reading, illuminance }: LightFields): boolean =>
  reading.state === 'missing' && illuminance.state === 'known';

/** Which of its data says how bright a light is; a reading comes before an illuminance. */
function givenBy({ reading, illuminance, luminance }: LightFields): string {
  if (reading.state === 'known') {
    const through = ifKnown(reading.value.through);
    return through ? message`from its meter reading, ${through}` : message`from its meter reading`;
  }
  if (illuminance.state === 'known') return message`from its illuminance`;
  return luminance.state === 'known' ? message`from its luminance` : message`brightness unknown`;
}
