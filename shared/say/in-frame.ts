/** Where in the picture something lies, in words: by thirds of the frame. */
import { message } from '../words/message.ts';

/** More of the frame than this is all of it. */
const ALL = 0.95;
/** Thirds, in half widths and half heights from the middle. */
const THIRD = 1 / 3;

/**
 * "at the upper left of the frame", "above the frame".
 *
 * @param place share of the frame that it takes, 0 to 1, and its middle in half widths and half heights
 */
export function saidInFrame(place: {
  readonly share: number;
  readonly across: number;
  readonly up: number;
}): string {
  const { share, across, up } = place;
  if (share === 0) {
    if (Math.max(Math.abs(up), Math.abs(across)) < 1) return message`beside the subject`;
    if (Math.abs(up) > Math.abs(across))
      return up > 0 ? message`above the frame` : message`below the frame`;
    return across > 0 ? message`right of the frame` : message`left of the frame`;
  }
  if (share > ALL) return message`all over the frame`;
  if (up > THIRD) {
    if (across < -THIRD) return message`at the upper left of the frame`;
    return across > THIRD
      ? message`at the upper right of the frame`
      : message`at the top of the frame`;
  }
  if (up < -THIRD) {
    if (across < -THIRD) return message`at the lower left of the frame`;
    return across > THIRD
      ? message`at the lower right of the frame`
      : message`at the bottom of the frame`;
  }
  if (across < -THIRD) return message`on the left of the frame`;
  return across > THIRD ? message`on the right of the frame` : message`in the middle of the frame`;
}
