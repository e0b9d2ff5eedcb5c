/** How large the subject comes out, how far the rig reaches and how far away it stands. */
import type { Figure } from '../../../figures/figure.ts';
import { rigsInReach } from '../../../figures/kit-search.ts';
import { atSubject } from '../../../report/at-subject.ts';
import { ringPlace } from '../../../report/ring.ts';
import { reachWords, sizeWords } from '../../../say/figures.ts';
import { significant } from '../../../say/say.ts';
import { message } from '../../../words/message.ts';
import { figureLine, type Line, last, line, paragraphs, plain, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

export function sizeHover({ bench, figures, say, sure }: SaidShot): string {
  const { magnification, reach, fieldMm, trace } = figures;
  const { recordedAreaMm: area, wantedMagnification: wanted, lens } = bench;
  const around = sure.behind.bind(sure);
  const length = (mm: number): string => say.length(mm);
  const times = (m: number): string => say.magnification(m);
  const closest = lens?.fields.closest;
  return paragraphs(
    // Out of reach, what would reach it is all that is asked: an editor shows the first lines of a hover.
    !magnification.known && wanted.known && reach.known && kitTable(bench, say),
    table([
      figureLine(message`magnification m`, magnification, (m) =>
        m === 0
          ? message`**0x**, focused at infinity`
          : `**${say.magnification(m)}**${around(message`magnification m`, (of) => of.magnification, times)}`,
      ),
      !magnification.known &&
        wanted.known &&
        line(message`planned`, `**${say.magnification(wanted.value)}**`),
      figureLine(
        message`field`,
        fieldMm,
        (size) =>
          `**${sizeWords(size, say)}**${sure.size(message`field`, (of) => of.fieldMm, 'length')}`,
      ),
      figureLine(
        message`magnification range of the rig`,
        reach,
        (ends) =>
          `${reachWords(ends, say)}${sure.range(message`magnification range`, (of) => of.reach, 'magnification')}`,
      ),
      reach.known &&
        area.known &&
        reach.value[0] < reach.value[1] &&
        line(
          message`· as field width`,
          reach.value.map((m) => say.length(area.value.width / m)).join(message` to `),
        ),
      figureLine(message`lens and parts behind it, m1`, figures.lensMagnification, (m) =>
        hasConverter(bench)
          ? message`${say.magnification(m)}, converter apart`
          : say.magnification(m),
      ),
      figureLine(
        message`focus ring`,
        figures.ringMagnification,
        () =>
          `${ringPlace(bench, figures, say)}${closest?.state === 'known' ? ringEnd(closest.value, say) : ''}`,
      ),
      atSubjectLine(figures, say),
      figureLine(
        message`working distance`,
        figures.workingDistanceMm,
        (mm) =>
          `${say.length(mm)}${around(message`working distance`, (of) => of.workingDistanceMm, length)}`,
      ),
      figureLine(
        message`subject to sensor`,
        figures.subjectToSensorMm,
        (mm) =>
          `${say.length(mm)}${around(message`subject to sensor`, (of) => of.subjectToSensorMm, length)}`,
      ),
    ]),
    magnification.known &&
      magnification.measured &&
      message`The magnification was measured: recorded area / field.`,
    trace.known &&
      !(magnification.known && magnification.measured) &&
      last(
        message`Formula: m = m1·M_c = ${significant(trace.value.lensMagnification)}·${significant(trace.value.converterMagnification)}${closeUps(bench) ? message` times what the close-up lens adds` : ''}; field = recorded area / m. Focal length at this setting ${significant(trace.value.focalMm)} mm; paraxial trace of ${bench.rigName === undefined ? message`the rig` : plain(bench.rigName)} (Hecht, Optics).`,
      ),
  );
}

function atSubjectLine(figures: SaidShot['figures'], say: SaidShot['say']): Line | false {
  const words = atSubject(figures, say);
  return words !== false && line(message`at the subject`, words);
}

type Closest = NonNullable<SaidShot['bench']['lens']>['fields']['closest'];
type KnownClosest = Extract<Closest, { state: 'known' }>['value'];

const ringEnd = ({ magnification }: KnownClosest, say: SaidShot['say']): string =>
  magnification.state === 'known'
    ? message`; closest focus ${say.magnification(magnification.value)}`
    : '';

const hasConverter = ({ parts }: SaidShot['bench']): boolean =>
  parts.known && parts.value.some(({ kind }) => kind === 'converter');

const closeUps = ({ parts }: SaidShot['bench']): boolean =>
  parts.known && parts.value.some(({ kind }) => kind === 'close-up');

/** Rigs of the kit that would reach what the present one does not. */
const MOST_RIGS = 4;

function kitTable(bench: SaidShot['bench'], say: SaidShot['say']): string {
  const { rigs, complete } = rigsInReach(bench, MOST_RIGS);
  if (rigs.length === 0)
    return complete
      ? message`No rig from the kit reaches it with this body and lens.`
      : message`No rig from the kit was found that reaches it. The kit is too large to try every combination.`;
  return [
    message`| from the sensor | effective | working distance | depth of field | light lost |`,
    '|:--|:--|:--|:--|:--|',
    ...rigs.map(({ parts, figures }) => {
      const cells = [
        parts.map(plain).join(', '),
        known(figures.effectiveFNumber, (n) => say.fNumber(n)),
        known(figures.workingDistanceMm, (mm) => say.length(mm)),
        known(figures.usableDepthMm, (mm) => say.length(mm)),
        known(figures.lightLossStops, (stops) => say.stops(stops)),
      ];
      return `| ${cells.join(' | ')} |`;
    }),
  ].join('\n');
}

const known = (figure: Figure<number>, words: (value: number) => string): string =>
  figure.known ? words(figure.value) : message`unknown`;
