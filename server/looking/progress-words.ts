import { message } from '../../shared/words/message.ts';

/** "2 of 5: a.mp4", "2 of 5: a.mp4, 40% looked at" */
export function progressWords(done: number, of: number, clip: string, looked?: number): string {
  return looked === undefined
    ? message`${done + 1} of ${of}: ${clip}`
    : message`${done + 1} of ${of}: ${clip}, ${Math.round(looked * 100)}% looked at`;
}
