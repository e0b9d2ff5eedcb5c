/** A clip against what its shot asks: what counts as another setting, and what doesn't. */
import { describe, expect, it } from 'vitest';
import { codecFamily } from '../../shared/clips/codec.ts';
import { differences } from '../../shared/clips/compare.ts';
import type { ClipAsk, ClipFacts } from '../../shared/clips/facts.ts';
import { exactRate } from '../../shared/clips/rate.ts';
import { settingsFrom } from '../../shared/clips/tags.ts';
import { writtenTimecode } from '../../shared/clips/timecode.ts';
import { rational } from '../../shared/quantity/rational.ts';
import { each } from '../support/each.ts';

const ASK: ClipAsk = {
  size: { width: 1920, height: 1080 },
  rate: rational(50),
  codec: 'h264',
  bitsPerS: 60e6,
  takeS: 20,
  shutterS: 1 / 100,
  iso: 800,
  whiteBalance: 5600,
};

const FACTS: ClipFacts = {
  bytes: 137.5e6,
  size: { width: 1920, height: 1080 },
  rotation: 0,
  rate: { kind: 'constant', rate: rational(50) },
  codec: 'h264',
  durationS: 22,
  bitsPerS: 50e6,
  shutterS: 1 / 100,
  iso: 800,
  whiteBalance: 5600,
  created: null,
};

const found = (facts: Partial<ClipFacts>, ask: Partial<ClipAsk> = {}) =>
  differences({ ...ASK, ...ask }, { ...FACTS, ...facts }).map(
    ({ of, lost }) => `${of}${lost ? ', lost' : ''}`,
  );

const constant = (n: number, d = 1) => ({ kind: 'constant', rate: rational(n, d) }) as const;

describe('a clip', () => {
  it.each<[string, Partial<ClipFacts>, readonly string[]]>([
    ['as asked', {}, []],
    ['smaller', { size: { width: 1280, height: 720 } }, ['size, lost']],
    ['larger', { size: { width: 3840, height: 2160 } }, ['size']],
    ['a picture', { isPicture: true, rate: null, durationS: 0 }, ['kind, lost']],
    ['slower', { rate: constant(25) }, ['rate, lost']],
    ['faster', { rate: constant(100) }, ['rate']],
    ['a thousandth slower', { rate: constant(50_000, 1001) }, ['rate, lost']],
    [
      'of a rate that changes',
      { rate: { kind: 'variable', lowest: 48, highest: 50, mean: 49.9 } },
      ['rate, lost'],
    ],
    ['of too few frames to tell', { rate: null }, []],
    [
      'with frames missing',
      { gaps: [{ frame: 41, atS: 0.82, missing: 2 }] },
      ['missing-frames, lost'],
    ],
    ['coded as fields', { picture: { isInterlaced: true } }, ['interlaced']],
    ['of narrow pixels', { picture: { pixelAspect: rational(4, 3) } }, ['pixel-aspect']],
    ['of square pixels', { picture: { pixelAspect: rational(1), isInterlaced: false } }, []],
    ['of 8 bits, where nothing is asked', { picture: { bitDepth: 8, chroma: '4:2:0' } }, []],
    [
      'of which frames are hidden',
      { edit: { skippedFrames: 10, leftFrames: 0, shownS: 21.8, emptyS: 0, pieces: 1 } },
      ['edit'],
    ],
    ['of another codec', { codec: 'hevc' }, ['codec']],
    ['of a codec that nobody knows', { codec: 'XXXX' }, []],
    ['of a quiet picture', { bitsPerS: 31e6 }, []],
    ['of the thin setting', { bitsPerS: 29e6 }, ['bitrate, lost']],
    ['a moment short', { durationS: 19.2 }, []],
    ['too short', { durationS: 18 }, ['duration']],
    ['upside down', { rotation: 180 }, []],
    ['on its side', { rotation: 90 }, ['rotation']],
    ['a sixth of a stop longer exposed', { shutterS: 1 / 90 }, []],
    ['a third of a stop longer exposed', { shutterS: 1 / 80 }, ['shutter']],
    ['a third of a stop more sensitive', { iso: 1000 }, ['iso']],
    ['with what was not carried', { shutterS: null, iso: null, whiteBalance: null }, []],
    ['at white balance 5500 K', { whiteBalance: 5500 }, []],
    ['at white balance 5400 K', { whiteBalance: 5400 }, ['white-balance']],
    ['with automatic white balance', { whiteBalance: 'auto' }, ['white-balance']],
  ])('%s', (_, facts, differing) => {
    expect(found(facts)).toEqual(differing);
  });

  it('of a shot that asks for nothing is as asked', () => {
    const nothing = Object.fromEntries(Object.keys(ASK).map((key) => [key, null]));
    expect(
      found({ size: { width: 1, height: 1 }, rate: constant(1), rotation: 90 }, nothing),
    ).toEqual([]);
  });
});

describe('codecs', () => {
  // What ffmpeg, Matroska (its codec registry), ISO media (mp4ra.org) and people call them.
  it('each family knows its names', () => {
    each(
      [
        ['h264', ['H.264', 'AVC', 'avc1', 'x264', 'V_MPEG4/ISO/AVC', 'h264']],
        ['hevc', ['H.265', 'HEVC', 'hvc1', 'hev1', 'V_MPEGH/ISO/HEVC']],
        ['prores', ['ProRes', 'ProRes 422 HQ', 'apch', 'apcn', 'ap4h']],
        ['mjpeg', ['MJPEG', 'MJPG', 'jpeg', 'Motion JPEG', 'V_MJPEG']],
        ['dnxhd', ['DNxHD', 'DNxHR HQ', 'AVdn', 'VC-3']],
        ['av1', ['AV1', 'av01', 'V_AV1']],
      ],
      ([family, names]) => {
        expect(names.map((name) => codecFamily(name))).toEqual(names.map(() => family));
      },
    );
  });

  it('that nobody here knows are none', () => {
    expect(codecFamily('raw 12')).toBeNull();
  });
});

describe('rates', () => {
  // SMPTE ST 12-1 and the rates over 1.001 of NTSC: exact fractions, however they were measured.
  it.each([
    [25, [25, 1]],
    [29.97002997, [30_000, 1001]],
    [23.976023976, [24_000, 1001]],
    [59.94005994, [60_000, 1001]],
    [12.5, [25, 2]],
    [30, [30, 1]],
  ] as const)('%f fps', (measured, [n, d]) => {
    expect(exactRate(measured)).toEqual(rational(n, d));
  });

  it.each([0, -25, Number.NaN, Number.POSITIVE_INFINITY, Math.PI * 7])('%f is none', (measured) => {
    expect(exactRate(measured)).toBeNull();
  });
});

describe('tags', () => {
  const of = (tags: Readonly<Record<string, unknown>>, rate: number | null = 25) =>
    settingsFrom(tags, rate);

  it.each([
    ['1/50', 0.02],
    ['1/50 s', 0.02],
    ['0.02', 0.02],
    ['180 deg', 0.02],
    ['180°', 0.02],
    ['soon', null],
    ['', null],
  ])('shutter %s', (written, seconds) => {
    const { shutterS } = of({ ExposureTime: written });
    if (seconds === null) expect(shutterS).toBeNull();
    else expect(shutterS).toBeCloseTo(seconds, 12);
  });

  it('an angle of an unknown rate is not known', () => {
    expect(of({ shutterAngle: '180 deg' }, null).shutterS).toBeNull();
  });

  it.each([
    ['com.maker.video.iso', '800', 800],
    ['PhotographicSensitivity', 'ISO 800', 800],
    ['iso', 'high', null],
    ['isomers', '800', null],
  ])('%s: %s', (name, written, iso) => {
    expect(of({ [name]: written }).iso).toBe(iso);
  });

  it.each([
    ['5600 K', 5600],
    ['5600', 5600],
    ['AUTO', 'auto'],
    // In Exif 1 stands for "manual", 0 for "automatic": a code is no temperature.
    ['1', null],
    ['cloudy', null],
  ])('white balance %s', (written, white) => {
    expect(of({ WhiteBalance: written }).whiteBalance).toBe(white);
  });

  it('that hold other things than text are passed by', () => {
    expect(of({ iso: new Uint8Array([1]), shutter: { a: 1 }, whitebalance: null })).toEqual({
      shutterS: null,
      iso: null,
      whiteBalance: null,
      created: null,
    });
  });
});

describe('the finished picture of a stack', () => {
  const PICTURE: ClipAsk = {
    ...{ size: { width: 1920, height: 1080 }, isLeast: true, isPicture: true },
    ...{ rate: null, codec: null, bitsPerS: null, takeS: null },
    ...{ shutterS: null, iso: null, whiteBalance: null },
  };
  const of = (size: ClipFacts['size'], isPicture = true) =>
    found(
      { size, ...(isPicture && { isPicture: true as const, rate: null, durationS: 0 }) },
      PICTURE,
    );

  it('may be larger than the delivery, not smaller, and no clip', () => {
    expect(of({ width: 6048, height: 4024 })).toEqual([]);
    expect(of({ width: 1600, height: 1200 })).toEqual(['size, lost']);
    expect(of({ width: 1920, height: 1080 }, false)).toEqual(['kind, lost']);
  });
});

describe('a recording mode that says how pictures are stored', () => {
  const asked = { bitDepth: 10, chroma: '4:2:2', transfer: 'hlg', primaries: 'bt2020' } as const;
  const of = (picture: NonNullable<ClipFacts['picture']>) => found({ picture }, { picture: asked });

  it('is met by what is the same, and by what the file does not say', () => {
    expect(of(asked)).toEqual([]);
    expect(of({})).toEqual([]);
  });

  it('loses bits and chroma for good; more of them is only another setting', () => {
    expect(of({ ...asked, bitDepth: 8, chroma: '4:2:0' })).toEqual([
      'bit-depth, lost',
      'chroma, lost',
    ]);
    expect(of({ ...asked, bitDepth: 12, chroma: '4:4:4' })).toEqual(['bit-depth', 'chroma']);
  });

  it('names another transfer and other primaries', () => {
    expect(of({ ...asked, transfer: 'bt709', primaries: 'bt709' })).toEqual([
      'transfer',
      'primaries',
    ]);
  });
});

describe('a timecode as it is written', () => {
  const ntsc = rational(30_000, 1001);
  // SMPTE ST 12-1: ten minutes of drop-frame have 17,982 frames, and number ;00 and ;01 are left out.
  it.each([
    ['00:00:00:00', rational(25), 0],
    ['10:00:00:05', rational(25), 900_005],
    ['00:00:59;29', ntsc, 1799],
    ['00:01:00;02', ntsc, 1800],
    ['00:10:00;00', ntsc, 17_982],
    ['01:00:00:00', ntsc, 108_000],
    ['00:00:00:25', rational(25), null],
    ['00:61:00:00', rational(25), null],
    ['soon', rational(25), null],
  ])('%s', (written, rate, frame) => {
    expect(writtenTimecode(written, rate)?.frame ?? null).toBe(frame);
  });
});
