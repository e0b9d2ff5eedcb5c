/** References of a timeline: relative by RFC 3986, file URLs by RFC 8089 (appendix E for drives and servers). */
import { describe, expect, it } from 'vitest';
import { referenceTo } from '../../shared/report/timeline/reference.ts';

const PLAN = 'file:///shoots/films/one.shootplan.yaml';

describe('the way from the written file to a clip', () => {
  it.each([
    ['beside the plan', 'media/a b.mov', undefined, undefined, 'media/a%20b.mov'],
    [
      'from another folder',
      'media/a.mov',
      undefined,
      'file:///edits/v1/cut.otio',
      '../../shoots/films/media/a.mov',
    ],
    ['up from the plan', '../cards/./a.mov', undefined, undefined, '../cards/a.mov'],
    [
      'where it was found',
      'a.mov',
      'file:///mnt/card%201/a.mov',
      'file:///edits/cut.otio',
      '../mnt/card%201/a.mov',
    ],
    ['with a name like a URL', 'http:/x?y#z.mov', undefined, undefined, 'http%3A/x%3Fy%23z.mov'],
    ['in backslashes', 'media\\day 1\\a.mov', undefined, undefined, 'media/day%201/a.mov'],
  ])('%s', (_, written, found, target, url) => {
    expect(referenceTo(written, found, { plan: PLAN, target })).toBe(url);
  });

  // RFC 3986, 5.2: a program resolves what is written against where it is written.
  it('leads there', () => {
    for (const target of ['file:///shoots/cut.otio', 'file:///x/y/cut.otio', 'file:///cut.otio'])
      for (const written of ['a.mov', '../b/ü & c.mov', 'd/e?f.mov']) {
        const url = referenceTo(written, undefined, { plan: PLAN, target });
        const way = written
          .split('/')
          .map((part) => (part === '..' ? part : encodeURIComponent(part)));
        expect(new URL(url, target).href).toBe(new URL(way.join('/'), PLAN).href);
      }
  });

  it('is a URL where there is none', () => {
    const around = {
      plan: 'file:///c%3A/films/one.shootplan.yaml',
      target: 'file:///d%3A/cut.otio',
    };
    expect(referenceTo('a.mov', undefined, around)).toBe('file:///c:/films/a.mov');
    expect(referenceTo('a.mov', undefined, { plan: around.plan })).toBe('a.mov');
    expect(referenceTo('E:\\rushes\\a.mov', undefined, around)).toBe('file:///E:/rushes/a.mov');
    expect(referenceTo('D:/rushes/a.mov', undefined, around)).toBe('rushes/a.mov');
    expect(referenceTo('\\\\nas\\rushes\\a b.mov', undefined, around)).toBe(
      'file://nas/rushes/a%20b.mov',
    );
  });
});

describe('the folder of the editing computer', () => {
  it.each([
    ['D:\\shoot', 'file:///D:/shoot/media/a%20b.mov'],
    ['D:\\', 'file:///D:/media/a%20b.mov'],
    ['/Volumes/raid 2/', 'file:///Volumes/raid%202/media/a%20b.mov'],
    ['\\\\nas\\shoot', 'file://nas/shoot/media/a%20b.mov'],
  ])('%s', (media, url) => {
    expect(referenceTo('media/a b.mov', 'file:///here/a.mov', { plan: PLAN, media })).toBe(url);
  });

  it('changes nothing of an absolute path', () => {
    const around = { plan: PLAN, media: 'D:\\shoot' };
    expect(referenceTo('/cards/a.mov', undefined, around)).toBe('../../cards/a.mov');
  });
});
