import { describe, expect, it } from 'vitest';
import { resolveUse } from '../../shared/workspace/use-path.ts';

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
