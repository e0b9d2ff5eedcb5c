/** How the exposure comes out, and what it would take to be right. */
import { ifKnown } from '../../../plan/field.ts';
import { exposureWords } from '../../words.ts';
import { figureLine, line, paragraphs, plain, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

export function exposureHover({ bench, figures, say }: SaidShot): string {
  const { iso, isoLimits, body, lights } = bench;
  const { exposureErrorStops: error, isoNeeded, effectiveFNumber, shutterSeconds } = figures;
  const auto = iso.known && iso.value === 'auto';
  const { lowest, highest, cleanTo } = isoLimits;
  return paragraphs(
    table([
      !auto && figureLine('exposure', error, (stops) => `**${errorWords(stops, say)}**`),
      figureLine('ISO needed', isoNeeded, (needed) => `**${say.iso(needed)}**`),
      auto && line('set', 'by the body'),
      figureLine('works as', effectiveFNumber, (n) => say.fNumber(n)),
      figureLine('shutter', shutterSeconds, (s) => say.shutter(s)),
      figureLine(
        'glass and filters',
        figures.glassLossStops,
        (stops) => `${say.stops(stops)} lost`,
      ),
      body &&
        lowest.known &&
        highest.known &&
        line(
          plain(body.name),
          `ISO ${say.number(lowest.value)} to ${say.number(highest.value)}${cleanTo.known ? `, clean to ${say.number(cleanTo.value)}` : ''}`,
        ),
      ...(lights.known
        ? lights.value.map((light) => line(plain(light.name), givenBy(light.fields)))
        : []),
    ]),
    error.known &&
      `Error = EV of the light − (log2(N_eff²/t) − log2(ISO/100) + stops lost), APEX.${
        lights.known && lights.value.some(({ fields }) => isByIlluminance(fields))
          ? ' EV of an illuminance E in lx = log2(E·100/250).'
          : ''
      }`,
  );
}

const errorWords = (stops: number, say: SaidShot['say']): string => {
  const words = exposureWords(stops, say).replace('exposure ', '');
  if (words === 'right') return words;
  return `${words}, ${stops > 0 ? 'too much light' : 'too little light'}`;
};

type LightFields = Extract<SaidShot['bench']['lights'], { known: true }>['value'][number]['fields'];

const isByIlluminance = ({ reading, illuminance }: LightFields): boolean =>
  reading.state === 'missing' && illuminance.state === 'known';

/** Which of its data says how bright a light is; a reading comes before an illuminance. */
function givenBy({ reading, illuminance }: LightFields): string {
  if (reading.state === 'known') {
    const through = ifKnown(reading.value.through);
    return through ? `by its reading, ${through}` : 'by its reading';
  }
  return illuminance.state === 'known' ? 'by its illuminance' : 'brightness not known';
}
