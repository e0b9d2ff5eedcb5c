/** The live view's messages: what is sent again, where a click leads, what a plan was before. */
import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import type { WorkspaceEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { ComparedBefore } from '../../server/handlers/compare.ts';
import type { LiveSheet } from '../../server/handlers/sheet.ts';
import { createCore } from '../../shared/core/core.ts';
import { EXAMPLE_PLAN } from '../../shared/rules/example-plan.ts';
import { at, connect, PLAN } from './support/client.ts';

const textDocument = { uri: PLAN };

async function opened(text = EXAMPLE_PLAN) {
  const client = await connect({ createCore });
  client.open(PLAN, text);
  const { connection } = client;
  return {
    client,
    sheet: (known?: Record<string, string>): Promise<LiveSheet> =>
      connection.sendRequest('lamella/sheet', { textDocument, ...(known && { known }) }),
    place: (shot: string, key: string) =>
      connection.sendRequest<unknown>('lamella/placeInSheet', { textDocument, shot, key }),
    shotAt: (line: number, character: number) =>
      connection.sendRequest<string | null>('lamella/shotAt', {
        textDocument,
        position: { line, character },
      }),
    compare: (before: Record<string, string | null>): Promise<ComparedBefore> =>
      connection.sendRequest('lamella/compare', { textDocument, before }),
  };
}

const marks = ({ shots }: LiveSheet): Record<string, string> =>
  Object.fromEntries(shots.map(({ name, mark }) => [name, mark]));

const lines = EXAMPLE_PLAN.split('\n');
const lineOf = (text: string, after = 0): number =>
  lines.findIndex((line, index) => index >= after && line.includes(text));

describe('the sheet', () => {
  it('comes whole at first, with what it looks like', async () => {
    const { sheet } = await opened();
    const { title, style, patterns, shots } = await sheet();
    expect(title).toBe('Winter Window');
    expect(style).toContain('vscode-editor-background');
    expect(patterns).toContain('hatched');
    expect(shots.map(({ name, html }) => [name, typeof html])).toEqual([
      ['frost', 'string'],
      ['skin', 'string'],
    ]);
  });

  it('sends again only the shots that an edit changed', async () => {
    const { client, sheet } = await opened();
    const first = await sheet();
    expect((await sheet(marks(first))).shots.some(({ html }) => html)).toBe(false);
    const line = lineOf('aperture: f/8', lineOf('  frost:'));
    client.change(PLAN, 2, [{ range: at(line, 14, 17), text: 'f/9' }]);
    const next = await sheet(marks(first));
    expect(next.style).toBeUndefined();
    expect(next.shots.map(({ name, html }) => [name, html !== undefined])).toEqual([
      ['frost', true],
      ['skin', false],
    ]);
    expect(next.shots[0]!.html).toContain('f/9');
  });

  it('keeps its sections while lines come and go above', async () => {
    const { client, sheet } = await opened();
    const first = await sheet();
    client.change(PLAN, 2, [{ range: at(1, 0, 0), text: '# a comment\n\n' }]);
    expect((await sheet(marks(first))).shots.some(({ html }) => html)).toBe(false);
  });

  it('is opened by buttons, one in every place that leads somewhere', async () => {
    const { sheet } = await opened();
    const { shots } = await sheet();
    const { document } = new JSDOM(shots.map(({ html }) => html).join('')).window;
    const places = [...document.querySelectorAll('figure[data-key], .setting[data-key]')];
    expect(places.length).toBeGreaterThan(20);
    for (const place of places) expect(place.querySelectorAll('button')).toHaveLength(1);
    const boxes = [...document.querySelectorAll('input')];
    expect(boxes.length).toBeGreaterThan(0);
    for (const box of boxes) {
      expect(box.disabled).toBe(false);
      expect(box.getAttribute('data-check')).toMatch(/^[a-z][a-z-]+$/);
    }
  });
});

describe('to and fro', () => {
  it('a key of a shot leads to its value, one that is not written to the shot', async () => {
    const { place } = await opened();
    const shot = lineOf('  skin:');
    const tilt = lineOf('tilt: 4 deg', shot);
    expect(await place('skin', 'tilt')).toEqual({ uri: PLAN, range: at(tilt, 10, 15) });
    expect(await place('skin', 'ring')).toEqual({ uri: PLAN, range: at(shot, 2, 6) });
    expect(await place('nobody', 'tilt')).toBeNull();
  });

  it('every key that the sheet names leads into its own shot', async () => {
    const { sheet, place } = await opened();
    for (const { name, html } of (await sheet()).shots) {
      const { document } = new JSDOM(html).window;
      const keys = [...document.querySelectorAll('[data-key]')].map(
        (one) => one.getAttribute('data-key')!,
      );
      expect(keys.length).toBeGreaterThan(10);
      const start = lineOf(`  ${name}:`);
      for (const key of new Set(keys)) {
        const found = (await place(name, key)) as { range: { start: { line: number } } };
        expect(found.range.start.line, key).toBeGreaterThanOrEqual(start);
        expect(found.range.start.line, key).toBeLessThan(start + 20);
      }
    }
  });

  it('a cut of the edit leads to its line', async () => {
    const cuts = 'edit:\n  cuts:\n    opening: { shot: frost, from: 0 s, duration: 4 s }\n';
    const { client, sheet } = await opened();
    const last = EXAMPLE_PLAN.split('\n').length - 1;
    client.change(PLAN, 2, [{ range: at(last, 0, 0), text: cuts }]);
    const { document } = new JSDOM((await sheet()).head).window;
    const row = document.querySelector('tr[data-cut]')!;
    expect(row.getAttribute('data-cut')).toBe('opening');
    expect(row.querySelectorAll('button')).toHaveLength(1);
    const place = (cut: string) =>
      client.connection.sendRequest('lamella/placeInSheet', { textDocument: { uri: PLAN }, cut });
    expect(await place('opening')).toEqual({ uri: PLAN, range: at(last + 2, 4, 11) });
    expect(await place('nothing')).toBeNull();
  });

  it('a position leads to its shot, or to none', async () => {
    const { shotAt } = await opened();
    expect(await shotAt(lineOf('tilt: 4 deg'), 8)).toBe('skin');
    expect(await shotAt(lineOf('  frost:'), 3)).toBe('frost');
    expect(await shotAt(0, 0)).toBeNull();
  });
});

describe('what the sheet shows of a place', () => {
  const cuts =
    'edit:\n  cuts:\n    opening:\n      shot: frost\n      from: 0 s\n      duration: 4 s\n';
  const shownAt = async (text: string, line: number, character: number) => {
    const { client } = await opened(text);
    const position = { line, character };
    return client.connection.sendRequest('lamella/shownAt', { textDocument, position });
  };

  it('is the shot with the key of the line', async () => {
    const line = lineOf('tilt: 4 deg');
    const tilt = { shot: 'skin', key: 'tilt', cut: null };
    expect(await shownAt(EXAMPLE_PLAN, line, 0)).toEqual(tilt);
    expect(await shownAt(EXAMPLE_PLAN, line, 12)).toEqual(tilt);
    const name = lineOf('  frost:');
    expect(await shownAt(EXAMPLE_PLAN, name, 3)).toEqual({ shot: 'frost', key: null, cut: null });
  });

  it('is the cut with its shot', async () => {
    const text = EXAMPLE_PLAN + cuts;
    const last = text.split('\n').length - 1;
    expect(await shownAt(text, last - 2, 8)).toEqual({ shot: 'frost', key: null, cut: 'opening' });
    const flow = `${EXAMPLE_PLAN}edit:\n  cuts:\n    opening: { shot: nobody, from: 0 s }\n`;
    expect(await shownAt(flow, last - 4, 8)).toMatchObject({ cut: 'opening' });
  });

  it('is nothing elsewhere', async () => {
    expect(await shownAt(EXAMPLE_PLAN, 0, 0)).toEqual({ shot: null, key: null, cut: null });
  });
});

describe('against what was before', () => {
  it('asks for the plan, then for what it used, then answers', async () => {
    const using = EXAMPLE_PLAN.replace('mains:', 'use: [kit.shootplan.yaml]\nmains:');
    const { compare } = await opened();
    expect(await compare({})).toEqual({ wanted: [PLAN] });
    const kit = 'file:///plans/kit.shootplan.yaml';
    expect(await compare({ [PLAN]: using })).toEqual({ wanted: [kit] });
    const answer = (await compare({ [PLAN]: using, [kit]: null })) as { markdown: string };
    expect(answer.markdown).toContain('resolved');
  });

  it('says what changed since, as the text stands in the editor', async () => {
    const { client, compare } = await opened();
    const line = lineOf('aperture: f/8', lineOf('  frost:'));
    client.change(PLAN, 2, [{ range: at(line, 14, 17), text: 'f/9' }]);
    const { markdown } = (await compare({ [PLAN]: EXAMPLE_PLAN })) as { markdown: string };
    expect(markdown).toContain('| aperture | f/8 | f/9 |');
  });
});

describe('a value that is chosen in a drawing', () => {
  const set = async (params: Readonly<Record<string, unknown>>, text = EXAMPLE_PLAN) => {
    const { client } = await opened(text);
    return client.connection.sendRequest<WorkspaceEdit | null>('lamella/setInSheet', {
      textDocument,
      ...params,
    });
  };
  const line = lineOf('aperture: f/8', lineOf('  frost:'));

  it('is one edit of that value alone: comment and blanks stay', async () => {
    const text = lines
      .map((one, index) => (index === line ? '    aperture:   f/8   # as tried' : one))
      .join('\n');
    const edit = await set({ shot: 'frost', key: 'aperture', value: 'f/11' }, text);
    const changes = edit!.changes ?? {};
    expect(Object.keys(changes)).toEqual([PLAN]);
    expect(changes[PLAN]).toEqual([{ range: at(line, 16, 19), newText: 'f/11' }]);
  });

  it('is written where the key stands nowhere yet', async () => {
    const text = EXAMPLE_PLAN.replace(/^ {4}tilt: .*\n/m, '');
    const edit = await set({ shot: 'skin', key: 'tilt', value: '4 deg' }, text);
    expect(JSON.stringify(edit)).toContain('tilt: 4 deg');
  });

  it('is nothing where no drawing sets the key, or the text is no value of it', async () => {
    for (const wrong of [
      { shot: 'frost', key: 'about', value: 'f/11' },
      { shot: 'frost', key: '__proto__', value: 'f/11' },
      { shot: 'frost', key: 'aperture', value: 'f/11\n    iso: 100' },
      { shot: 'frost', key: 'aperture', value: '11 mm' },
      { shot: 'frost', key: 'aperture' },
      { shot: 'nobody', key: 'aperture', value: 'f/11' },
      {},
    ])
      expect(await set(wrong), JSON.stringify(wrong)).toBeNull();
  });
});

describe('a check that is ticked', () => {
  const tick = async (text: string, ...all: readonly Readonly<Record<string, unknown>>[]) => {
    const { client, sheet } = await opened(text);
    let now = text;
    for (const params of all) {
      const edit = await client.connection.sendRequest<WorkspaceEdit | null>(
        'lamella/tickInSheet',
        { textDocument, ...params },
      );
      const edits = edit?.changes?.[PLAN] ?? [];
      now = TextDocument.applyEdits(TextDocument.create(PLAN, '', 1, now), edits);
    }
    return { now, sheet, client };
  };
  const withChecks = (own: string): string =>
    EXAMPLE_PLAN.replace(/^ {4}preflight:.*\n(?: {6}.*\n)*/gm, '').replace(
      '  skin:\n',
      `  skin:\n${own}`,
    );
  const own = '    preflight:   # on the day\n      focus-by-hand: open   # slowly\n';

  it('is done with its day and by whom, and its comment stays', async () => {
    const text = withChecks(own);
    const ticked = { shot: 'skin', check: 'focus-by-hand', done: '2027-03-02', by: 'op' };
    const { now } = await tick(text, ticked);
    const line = '      focus-by-hand: { done: 2027-03-02, by: op }   # slowly';
    expect(now).toBe(text.replace('      focus-by-hand: open   # slowly', line));
    const { now: nobody } = await tick(text, { ...ticked, by: ' ' });
    expect(nobody).toContain('focus-by-hand: { done: 2027-03-02 }   # slowly');
    const { now: quoted } = await tick(text, { ...ticked, by: "O'Neil, no" });
    expect(quoted).toContain('by: "O\'Neil, no" }');
  });

  it('is open again when it is unticked', async () => {
    const text = withChecks(own.replace('open', '{ done: 2027-03-02, by: op }'));
    const { now } = await tick(text, { shot: 'skin', check: 'focus-by-hand' });
    expect(now).toBe(withChecks(own));
  });

  it('is of every shot, and written in the one that it was done for', async () => {
    const text = withChecks('');
    const { now } = await tick(text, {
      shot: 'skin',
      check: 'focus-at-full-size',
      done: '2027-03-02',
    });
    expect(now).toContain('focus-at-full-size: { done: 2027-03-02 }');
    expect(now.indexOf('focus-at-full-size: {')).toBeGreaterThan(now.indexOf('  skin:'));
    const { now: once } = await tick(text, { check: 'card-and-battery', done: '2027-03-02' });
    expect(once).toContain('once: { card-and-battery: { done: 2027-03-02 } }');
  });

  it('is nothing where the plan has no such check, or what is written is no state of one', async () => {
    const text = withChecks(own);
    const right = { shot: 'skin', check: 'focus-by-hand', done: '2027-03-02', by: 'op' };
    for (const wrong of [
      { check: 'focus' },
      { check: '__proto__' },
      { check: 'focus-by-hand: open\n      more' },
      { shot: 'nobody' },
      { shot: null },
      { done: 'yesterday' },
      { done: '2027-03-02, by: x }\n' },
      { by: 'o\u202ep' },
      { by: 'o\np' },
      { by: 'x'.repeat(41) },
      { check: undefined },
    ]) {
      const { now } = await tick(text, { ...right, ...wrong });
      expect(now, JSON.stringify(wrong)).toBe(text);
    }
  });
});
