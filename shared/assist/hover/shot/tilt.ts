/** What the tilt costs in depth, against the same shot with the subject facing the lens. */

import { substitute } from '../../../figures/bench.ts';
import { figuresOf } from '../../../figures/compute.ts';
import { derive, known } from '../../../figures/figure.ts';
import { natureOf } from '../../../figures/subject-kinds.ts';
import { inBrackets } from '../../../say/around.ts';
import { shownField } from '../../../say/shown.ts';
import { message } from '../../../words/message.ts';
import { figureLine, last, line, paragraphs, table } from '../markdown.ts';
import { depthLines } from './aperture.ts';
import { mirrorTiltLines, mirrorTiltWords } from './mirror.ts';
import type { SaidShot } from './view.ts';

export function tiltHover(shot: SaidShot): string {
  const { bench, figures, say } = shot;
  const facing = figuresOf(substitute(bench, { tiltRad: known(0) }));
  const { tilt } = bench.fields;
  const written = tilt.state === 'known' && tilt.range ? shownField('angle', tilt, say) : '';
  const byTilt = derive(
    [figures.depthMm.needed, facing.depthMm.needed],
    (tilted, flat) => tilted - flat,
  );
  const byMove = derive([figures.travelMm, facing.travelMm], (tilted, flat) => tilted - flat);
  const shape = natureOf(bench.subject)?.shape;
  const isFlat = shape !== undefined && shape !== 'ball';
  const [mirrorWindow, mirrorLimits] = mirrorTiltLines(shot);
  return paragraphs(
    table([
      bench.tiltRad.known &&
        line(
          message`tilt`,
          message`**${say.angle(bench.tiltRad.value)}**${inBrackets(written)} about the ${bench.tiltAxis} axis`,
        ),
      ...mirrorWindow,
      ...depthLines(shot),
      figureLine(message`depth needed by the tilt`, byTilt, (mm) => say.length(mm)),
      byMove.known &&
        byMove.value > 0 &&
        line(message`· of that, the move`, say.length(byMove.value)),
      ...mirrorLimits,
    ]),
    mirrorTiltWords(shot),
    byTilt.known &&
      isFlat &&
      last(
        message`Formula: depth = the smaller of field and subject·cos t, times tan t, for a flat subject tilted by t. A slide along it adds speed·time·sin t (trigonometry).`,
      ),
  );
}
