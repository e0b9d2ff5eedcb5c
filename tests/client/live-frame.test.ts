/** The frame beside the text: small at once, sharp at rest, and never one of before the last edit. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { LiveFrame } from '../../client/live-frame.ts';
import type { PageFrame } from '../../shared/api/frame.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const frameOf = (shot: string, width: number): PageFrame => ({
  width,
  height: 1,
  src: shot,
  caption: [],
});

function live() {
  const asked: { shot: string; width: number; answer: (frame: PageFrame | null) => void }[] = [];
  const shown: string[] = [];
  const frame = new LiveFrame(
    (shot, width) => new Promise((answer) => asked.push({ shot, width, answer })),
    (shot, it) => shown.push(`${shot} ${it?.width ?? 'nothing'}`),
  );
  const answerAll = async (): Promise<void> => {
    for (const { shot, width, answer } of asked.splice(0)) answer(frameOf(shot, width));
    await vi.advanceTimersByTimeAsync(0);
  };
  return { frame, asked, shown, answerAll };
}

it('draws small at once and sharp when nothing has changed for a while', async () => {
  const { frame, shown, answerAll } = live();
  void frame.follow('skin', false);
  await answerAll();
  expect(shown).toEqual(['skin 160']);
  await vi.advanceTimersByTimeAsync(2000);
  await answerAll();
  expect(shown).toEqual(['skin 160', 'skin 480']);
});

it('draws the same shot anew only where the plan may have changed', async () => {
  const { frame, asked, answerAll } = live();
  void frame.follow('skin', false);
  await answerAll();
  void frame.follow('skin', false);
  expect(asked).toEqual([]);
  void frame.follow('skin', true);
  expect(asked).toHaveLength(1);
});

it('shows no answer to a question that another one has followed', async () => {
  const { frame, asked, shown, answerAll } = live();
  void frame.follow('skin', false);
  void frame.follow('frost', false);
  expect(asked.map(({ shot }) => shot)).toEqual(['skin', 'frost']);
  await answerAll();
  expect(shown).toEqual(['frost 160']);
  void frame.follow(null, false);
  await vi.advanceTimersByTimeAsync(2000);
  expect(asked).toEqual([]);
  void frame.follow('skin', false);
  frame.dispose();
  await answerAll();
  expect(shown).toEqual(['frost 160']);
});

it('takes the frame away where there is nothing to draw', async () => {
  const { frame, asked, shown } = live();
  void frame.follow('skin', false);
  asked[0]!.answer(null);
  await vi.advanceTimersByTimeAsync(0);
  expect(shown).toEqual(['skin nothing']);
});
