/** The edit as a file, over the connection. */
import { expect, it } from 'vitest';
import type { TimelineFile } from '../../shared/api/timeline.ts';
import { createCore } from '../../shared/core/core.ts';
import { withEdit } from '../support/edits.ts';
import { connect, PLAN } from './support/client.ts';

async function ask(text: string, format: string, more = {}): Promise<TimelineFile | null> {
  const client = await connect({ createCore });
  client.open(PLAN, text);
  return client.connection.sendRequest('lamella/timeline', {
    textDocument: { uri: PLAN },
    format,
    ...more,
  });
}

it('comes in each format, with what that can’t hold, or as the reason why not', async () => {
  const text = withEdit(['one: { shot: skin, duration: 1 bar }']);
  const otio = await ask(text, 'otio');
  expect(otio?.ok && JSON.parse(otio.text).OTIO_SCHEMA).toBe('Timeline.1');
  const list = await ask(text, 'csv');
  expect(list?.ok && list.text).toMatch(/^number,cut,/);
  const edl = await ask(text, 'edl');
  expect(edl?.ok && edl.text).toMatch(/^TITLE: /);
  const xml = await ask(text, 'fcpxml');
  expect(xml?.ok && xml.notes).toContain('skin, take 1 has no file yet. A gap keeps its place.');
  expect(await ask(withEdit([]), 'otio')).toEqual({
    ok: false,
    why: 'the plan has no edit with cuts',
  });
});

it('starts at the timecode, and refers to the folder of the media, that the settings name', async () => {
  const text = withEdit(['one: { shot: skin, duration: 1 s }']).concat(
    '\nclips:\n  skin:\n    - { file: a.mov, verdict: keep }\n',
  );
  const plain = await ask(text, 'otio', { media: '', startTimecode: '' });
  expect(plain).toEqual(await ask(text, 'otio'));
  const set = await ask(text, 'otio', { media: '/Volumes/media', startTimecode: '01:00:00:00' });
  if (!set?.ok) throw new Error(set?.why);
  const { global_start_time: start } = JSON.parse(set.text);
  // One hour of frames (SMPTE ST 12-1, non-drop).
  expect(start.value).toBe(3600 * start.rate);
  expect(set.text).toContain('file:///Volumes/media/a.mov');
  expect(await ask(text, 'otio', { startTimecode: 'noon' })).toMatchObject({ ok: false });
});
