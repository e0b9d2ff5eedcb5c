import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathBetween, resolveUse } from '../../shared/workspace/use-path.ts';

describe('resolveUse', () => {
  const cases: readonly [from: string, written: string, root: string, to: string | null][] = [
    ['file:///w/a/p.yaml', 'kit.yaml', 'file:///w', 'file:///w/a/kit.yaml'],
    ['file:///w/a/p.yaml', '../kit.yaml', 'file:///w', 'file:///w/kit.yaml'],
    ['file:///w/a/p.yaml', './b/./kit.yaml', 'file:///w/', 'file:///w/a/b/kit.yaml'],
    ['file:///w/p.yaml', 'our kit.yaml', 'file:///w', 'file:///w/our%20kit.yaml'],
    [
      'vscode-remote://host+x/w/p.yaml',
      'kit.yaml',
      'vscode-remote://host+x/w',
      'vscode-remote://host+x/w/kit.yaml',
    ],
    ['memfs:/w/p.yaml', 'kit.yaml', 'memfs:/w', 'memfs:/w/kit.yaml'],
    ['memfs:/p.yaml', 'kit.yaml', 'memfs:/', 'memfs:/kit.yaml'],
    ['file:///w/p.yaml', '../kit.yaml', 'file:///w', null],
    ['file:///w/p.yaml', '../../../kit.yaml', 'file:///w', null],
    ['file:///w/p.yaml', '/etc/kit.yaml', 'file:///w', null],
    ['file:///w/p.yaml', 'C:\\kit.yaml', 'file:///w', null],
    ['file:///w/p.yaml', 'https://host/kit.yaml', 'file:///w', null],
    ['file:///work-other/p.yaml', 'kit.yaml', 'file:///work', null],
    ['untitled:Untitled-1', 'kit.yaml', 'file:///w', null],
    ['file:///w/p.yaml', '', 'file:///w', null],
  ];

  it.each(cases)('from %s, %s', (from, written, root, to) => {
    const target = resolveUse(from, written, root);
    expect(target.ok ? target.file : null).toBe(to);
  });

  it('from one folder of a workspace into another, and no further', () => {
    const from = 'file:///a/p.yaml';
    const roots = ['file:///a', 'file:///kit'];
    expect(resolveUse(from, '../kit/our.yaml', ...roots)).toEqual({
      ok: true,
      file: 'file:///kit/our.yaml',
    });
    for (const written of ['../kitten/our.yaml', '../our.yaml', '../../kit/our.yaml/..'])
      expect(resolveUse(from, written, ...roots).ok, written).toBe(false);
  });
});

describe('pathBetween', () => {
  // Checked against Node's own `path.posix.relative`.
  it('is the path that resolveUse follows, and the shortest', () => {
    const step = fc.constantFrom('a', 'b', 'our kit', 'ä', '100%', '(x)', '...');
    const steps = fc.array(step, { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(steps, steps, (from, to) => {
        const uri = (parts: readonly string[]) => `file:///${parts.map(encoded).join('/')}`;
        const written = pathBetween(uri(from), uri(to));
        if (`${from}` !== `${to}`)
          expect(written).toBe(
            path.posix.relative(`/${from.slice(0, -1).join('/')}`, `/${to.join('/')}`) || written,
          );
        expect(resolveUse(uri(from), written ?? '', 'file:///')).toEqual({
          ok: true,
          file: uri(to),
        });
      }),
    );
  });

  it('is none between file systems, nor for what no path says', () => {
    expect(pathBetween('file:///a.yaml', 'memfs:/b.yaml')).toBeNull();
    expect(pathBetween('file:///a.yaml', 'file:///b%2Fc.yaml')).toBeNull();
    expect(pathBetween('file:///a.yaml', 'file:///b%ff.yaml')).toBeNull();
    expect(pathBetween('untitled:a', 'file:///b.yaml')).toBeNull();
  });
});

const encoded = (step: string): string =>
  encodeURIComponent(step).replace(
    /[!'()*]/g,
    (character) => `%${character.charCodeAt(0).toString(16).toUpperCase()}`,
  );
