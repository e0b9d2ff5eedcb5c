/** What is recorded, the pixel that counts in the end, and how slow it may run. */
import { assumedOfRecording } from '../../../figures/assumed-of.ts';
import { assumedWords } from '../../../figures/assumed-words.ts';
import { clipRateOf, isConformed, slowedTimes } from '../../../figures/playback.ts';
import { toNumber } from '../../../quantity/rational.ts';
import { message } from '../../../words/message.ts';
import { entryLines } from '../entry-data.ts';
import { code, figureLine, line, paragraphs, plain, table } from '../markdown.ts';
import type { SaidShot } from './view.ts';

export function recordingHover({ bench, figures, say, sure }: SaidShot): string {
  const { recording, recordedPixels, recordedAreaMm, deliver } = bench;
  const clipRate = clipRateOf(bench);
  const delivered = deliver?.rate.state === 'known' ? toNumber(deliver.rate.value) : undefined;
  const slow = delivered !== undefined && clipRate.known ? delivered / toNumber(clipRate.value) : 1;
  return paragraphs(
    table([
      recording && line(`**${plain(recording.name)}**`, message`of ${plain(recording.of.name)}`),
      ...(recording ? entryLines('recording', recording.fields, say) : []),
      recordedPixels.known &&
        recordedAreaMm.known &&
        line(
          message`recorded pixel`,
          say.micrometres((1000 * recordedAreaMm.value.width) / recordedPixels.value.width),
        ),
      figureLine(
        message`effective pixel`,
        figures.pixelUm,
        (um) =>
          `${say.micrometres(um)}${sure.behind(
            message`effective pixel`,
            (of) => of.pixelUm,
            (x) => say.micrometres(x),
          )}`,
      ),
      figureLine(message`circle of confusion`, figures.circleOfConfusionMm, (mm) =>
        say.micrometres(mm * 1000),
      ),
      isConformed(bench) &&
        figureLine(
          message`plays at`,
          slowedTimes(bench),
          (times) => message`${say.percent(1 / times)} of real speed`,
        ),
      figureLine(message`data per frame`, figures.frameBytes, (bytes) => say.bytes(bytes)),
      slow < 1 &&
        line(
          message`slowest without repeats`,
          message`${say.percent(slow)} at ${say.number(delivered ?? 0)} fps delivered`,
        ),
    ]),
    ...(recording ? assumedOfRecording(recording.name, recording.fields) : []).map(({ id, of }) =>
      assumedWords({ id, of: of === null ? null : code(of) }, say),
    ),
    figures.pixelUm.known &&
      message`The effective pixel is the coarser of the recorded and the delivered one, on the sensor (sampling: the lower Nyquist limit holds).`,
  );
}
