/** Clips checked for an editor: by the server as it is shipped, and where there is no disk. */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import {
  CancellationTokenSource,
  createProtocolConnection,
  StreamMessageReader,
  StreamMessageWriter,
  WorkDoneProgress,
} from 'vscode-languageserver/node';
import type { ClipsInEditor } from '../../server/handlers/clips.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { makeClip } from '../support/ffmpeg.ts';
import { connect, PLAN } from './support/client.ts';

const SERVER = fileURLToPath(new URL('../../dist/lamella-language-server.cjs', import.meta.url));

const CLIPS = `clips:
  frost:
    - { file: small.mp4, verdict: keep }
    - { file: gone.mp4 }
    - { file: ../../elsewhere.mp4 }
`;

describe('the server on a machine with a disk', () => {
  it('answers with findings on the clips’ lines and a page', async () => {
    const folder = mkdtempSync(path.join(os.tmpdir(), 'lamella-clips-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    makeClip(path.join(folder, 'small.mp4'), { size: '1280x720' });
    makeClip(path.join(folder, 'other.mov'));
    const text = `${EXAMPLE_PLAN}\n${CLIPS}`;
    const file = path.join(folder, 'a.shootplan.yaml');
    writeFileSync(file, text);
    const uri = pathToFileURL(file).href;

    const child = spawn(process.execPath, [SERVER, '--stdio']);
    onTestFinished(() => {
      child.kill();
    });
    const connection = createProtocolConnection(
      new StreamMessageReader(child.stdout),
      new StreamMessageWriter(child.stdin),
    );
    connection.listen();
    const workspaceFolders = [{ uri: pathToFileURL(folder).href, name: 'plans' }];
    await connection.sendRequest('initialize', {
      processId: null,
      rootUri: null,
      capabilities: {},
      workspaceFolders,
    });
    await connection.sendNotification('initialized', {});
    await connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri, languageId: 'shootplan', version: 1, text },
    });
    const told: (string | undefined)[] = [];
    connection.onProgress(WorkDoneProgress.type, 'reading', (value) => {
      if (value.kind === 'report') told.push(value.message);
    });
    const answer = await connection.sendRequest<ClipsInEditor>('lamella/clips', {
      textDocument: { uri },
      workDoneToken: 'reading',
    });
    expect(told).toEqual(['1 of 3: small.mp4', '2 of 3: gone.mp4', '3 of 3: ../../elsewhere.mp4']);
    if ('unavailable' in answer) throw new Error(answer.unavailable);
    const line = (words: string) => text.split('\n').findIndex((each) => each.includes(words));
    expect(answer.diagnostics.map(({ code, range }) => [code, range.start.line])).toEqual([
      ['clip-differs', line('small.mp4')],
      ['clip-not-found', line('gone.mp4')],
      ['clip-not-found', line('elsewhere.mp4')],
    ]);
    expect(answer.stopped).toBe(false);
    expect(answer.markdown).toContain('| small.mp4 | frost | keep | 1280 × 720 | 25 fps | h264 ');
    expect(answer.markdown).toContain('## Not listed in the plan\n\n- other.mov');
    expect(answer.markdown).not.toContain('data:image');

    told.length = 0;
    const looked = await connection.sendRequest<ClipsInEditor>('lamella/clips', {
      textDocument: { uri },
      workDoneToken: 'reading',
      look: true,
    });
    if ('unavailable' in looked) throw new Error(looked.unavailable);
    expect(looked.markdown).toContain('| Looked at | Frames |');
    // Of the one clip that could be read: its name, then its picture (PNG's signature in base64).
    expect(looked.markdown).toContain('\n\nsmall.mp4\n\n![](data:image/png;base64,iVBORw0KGgo');
    expect(looked.markdown.match(/data:image/g)).toHaveLength(1);
  });
});

describe('the server elsewhere', () => {
  it('says that it can’t where there is no disk', async () => {
    const client = await connect();
    client.open(PLAN, 'shot: drift\n');
    const answer = await client.connection.sendRequest<ClipsInEditor>('lamella/clips', {
      textDocument: { uri: PLAN },
    });
    expect(answer).toEqual({
      unavailable:
        'Clips can only be read from a disk. Use a desktop editor, or `lamella clips` on the command line.',
    });
  });

  it('has no answer about a text that isn’t open', async () => {
    const client = await connect();
    const params = { textDocument: { uri: PLAN } };
    expect(await client.connection.sendRequest('lamella/clips', params)).toBeNull();
  });

  it('tells the host to stop when the client doesn’t want to know any more', async () => {
    let begun = (): void => undefined;
    const asked = new Promise<void>((resolve) => {
      begun = resolve;
    });
    let heard = (): void => undefined;
    const stopped = new Promise<void>((resolve) => {
      heard = resolve;
    });
    const client = await connect({
      checkClips: (_core, _plan, _root, _look, signal) => {
        begun();
        return new Promise((resolve) => {
          signal.addEventListener('abort', () => {
            heard();
            resolve({
              ...{ clips: [], readings: new Map(), notAsked: [], thumbnails: new Map() },
              ...{ stopped: true, looking: 'not-asked' },
            });
          });
        });
      },
    });
    client.open(PLAN, 'shot: drift\n');
    const source = new CancellationTokenSource();
    const answer = client.connection.sendRequest(
      'lamella/clips',
      { textDocument: { uri: PLAN } },
      source.token,
    );
    await asked;
    source.cancel();
    await stopped;
    expect(await answer).toMatchObject({ stopped: true });
  });
});
