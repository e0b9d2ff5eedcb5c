import { expect, it } from 'vitest';
import { canonicalUri, folderOf, isBelow } from '../../server/canonical-uri.ts';
import { pathOfUri, uriOfPath } from '../../server/files/uri.ts';
import { resolveUse } from '../../shared/workspace/use-path.ts';

/** RFC 3986, 6.2.2: escapes in upper case, and no difference between an escape and its character. */
it.each([
  ['file:///plans/a%20(1).shootplan.yaml', 'file:///plans/a%20%281%29.shootplan.yaml'],
  ['file:///plans/%c3%a9.shootplan.yaml', 'file:///plans/%C3%A9.shootplan.yaml'],
  ['file:///plans/é.shootplan.yaml', 'file:///plans/%C3%A9.shootplan.yaml'],
  ['file:///C:/plans/a.shootplan.yaml', 'file:///c%3A/plans/a.shootplan.yaml'],
  ['file:///c%3A/plans/a.shootplan.yaml', 'file:///c%3A/plans/a.shootplan.yaml'],
  ['file://server/share/a%7Eb', 'file://server/share/a~b'],
  ['memfs://host+x/a b', 'memfs://host+x/a%20b'],
  ['file:///plans/100%/a', 'file:///plans/100%/a'],
  ['untitled:Untitled-1', 'untitled:Untitled-1'],
  ['', ''],
])('%s is %s', (uri, canonical) => {
  expect(canonicalUri(uri)).toBe(canonical);
  expect(canonicalUri(canonical)).toBe(canonical);
});

it('gives a path the address that the core finds it under', () => {
  const names = [
    'a b',
    '(1)',
    "it's",
    'é',
    '100%',
    'a#b',
    'a?b',
    'a+b',
    '[x]',
    '~x',
    'a&b=c',
    '%41',
  ];
  for (const name of names) {
    const file = uriOfPath(`/plans/${name}.shootplan.yaml`);
    const target = resolveUse(
      uriOfPath('/plans/p.shootplan.yaml'),
      `${name}.shootplan.yaml`,
      'file:///plans',
    );
    expect(target).toEqual({ ok: true, file });
    expect(pathOfUri(file)).toBe(`/plans/${name}.shootplan.yaml`);
  }
});

it('tells a folder from another whose name starts alike', () => {
  expect(isBelow('file:///plans', 'file:///plans/a')).toBe(true);
  expect(isBelow('file:///', 'file:///plans/a')).toBe(true);
  expect(isBelow('file:///plans', 'file:///plans-b/a')).toBe(false);
  expect(isBelow('file:///plans', 'file:///plans')).toBe(false);
  expect(folderOf('file:///plans/a')).toBe('file:///plans');
});

it('knows no path for what is not on this machine', () => {
  expect(pathOfUri('memfs://host/a')).toBeNull();
  expect(pathOfUri('file://elsewhere/a')).toBeNull();
  expect(pathOfUri('file:///a%2Fb')).toBeNull();
  expect(pathOfUri('untitled:x')).toBeNull();
});
