import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { promisify } from 'node:util';

/** What is written into a picture; lengths in mm, distance in m, as Exif has them. */
export interface WrittenTags {
  readonly FocalLength: number;
  readonly FNumber: number;
  readonly ExposureTime?: number;
  readonly ISO?: number;
  readonly SubjectDistance: number;
  readonly FocalLengthIn35mmFormat: number;
}

/** What the program works out from it. */
export interface CompositeTags {
  readonly circleOfConfusionMm: number;
  readonly hyperfocalM: number;
  readonly nearM: number;
  /** 0: endless. */
  readonly farM: number;
  readonly fovDeg: number;
  readonly lightValue: number | undefined;
}

/** The smallest JPEG file that has somewhere to keep Exif: start of image, an empty scan, end of image. */
const TINY_JPEG = Buffer.from('ffd8ffda0008010100003f00ffd9', 'hex');

/**
 * Writes each set of tags into a picture of its own and reads back what exiftool makes of it. One process,
 * whatever their number. ExifTool by P. Harvey, as packed by the npm package exiftool-vendored.pl.
 */
export async function compositesOf(all: readonly WrittenTags[]): Promise<CompositeTags[]> {
  const folder = mkdtempSync(join(tmpdir(), 'composites-'));
  try {
    const pictures = join(folder, 'pictures');
    mkdirSync(pictures);
    const args: string[] = [];
    for (const [index, tags] of all.entries()) {
      const file = join(pictures, `${String(index).padStart(5, '0')}.jpg`);
      writeFileSync(file, TINY_JPEG);
      for (const [tag, value] of Object.entries(tags)) args.push(`-Exif:${tag}#=${value}`);
      args.push('-overwrite_original', file, '-execute');
    }
    const wanted = ['CircleOfConfusion', 'HyperfocalDistance', 'DOF', 'FOV', 'LightValue'];
    args.push('-json', '-n', ...wanted.map((tag) => `-${tag}`), '-FileName', pictures);
    const list = join(folder, 'arguments');
    writeFileSync(list, `${args.join('\n')}\n`);
    const ran = await promisify(execFile)('perl', [program(), '-@', list], { maxBuffer: 1 << 26 });
    const read = JSON.parse(ran.stdout.slice(ran.stdout.indexOf('[{'))) as Record<
      string,
      string | number
    >[];
    read.sort((a, b) => String(a.FileName).localeCompare(String(b.FileName)));
    if (read.length !== all.length) throw new Error(`${read.length} of ${all.length} came back`);
    return read.map(toComposite);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function program(): string {
  const found = createRequire(import.meta.url).resolve('exiftool-vendored.pl/package.json');
  return join(dirname(found), 'bin', 'exiftool');
}

function toComposite(tags: Record<string, string | number>): CompositeTags {
  const [nearM, farM] = String(tags.DOF).split(' ').map(Number);
  return {
    circleOfConfusionMm: Number(tags.CircleOfConfusion),
    hyperfocalM: Number(tags.HyperfocalDistance),
    nearM: nearM as number,
    farM: farM as number,
    fovDeg: Number(String(tags.FOV).split(' ')[0]),
    lightValue: tags.LightValue === undefined ? undefined : Number(tags.LightValue),
  };
}
