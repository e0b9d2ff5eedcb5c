/** Where a timeline finds its clips: URLs by RFC 3986 and RFC 8089, relative where they can be. */

/** A URL or a path in parts, decoded. */
interface Place {
  /** "file://", "file://server", "vscode-vfs://github": what comes before the path. */
  readonly origin: string;
  readonly parts: readonly string[];
}

const DRIVE = /^[A-Za-z]:$/;
const URL_FORM = /^([A-Za-z][A-Za-z0-9+.-]+:\/\/[^/]*)(\/.*)?$/;
const LONE_SURROGATE = /\p{Surrogate}/gu;

interface Around {
  /** URL of the plan, and of the file that is written; left out: it lies beside the plan. */
  readonly plan: string;
  readonly target?: string | undefined;
  /** Path or URL of the folder with the clips. */
  readonly media?: string | undefined;
}

/**
 * @param written the clip's path as the plan has it, relative or absolute, with `/` or `\`
 * @param found URL at which it is; undefined: it isn't known to be anywhere
 */
export function referenceTo(written: string, found: string | undefined, around: Around): string {
  const { plan, target, media } = around;
  const own = absolute(written);
  if (media !== undefined && !own) {
    const folder = absolute(media) ?? { origin: 'file://', parts: partsOf(media) };
    return urlOf({ ...folder, parts: resolved(folder.parts, partsOf(written)) });
  }
  const folder = parsed(plan);
  const there =
    (found === undefined ? undefined : parsed(found)) ??
    own ??
    (folder && {
      origin: folder.origin,
      parts: resolved(folder.parts.slice(0, -1), partsOf(written)),
    });
  const from = parsed(target ?? plan);
  return there && from
    ? relative(from, there)
    : resolved([], partsOf(written)).map(encoded).join('/');
}

/** A path with a drive letter, of a server (`\\server\share`) or from the root. */
function absolute(path: string): Place | undefined {
  const parts = partsOf(path);
  if (DRIVE.test(parts[0] ?? '') && /[/\\]/.test(path[2] ?? ''))
    return { origin: 'file://', parts };
  if (/^[/\\]{2}[^/\\]/.test(path)) return { origin: `file://${parts[0]}`, parts: parts.slice(1) };
  return /^[/\\]/.test(path) ? { origin: 'file://', parts } : undefined;
}

const partsOf = (path: string): readonly string[] =>
  path.split(/[/\\]/).filter((part) => part !== '');

function parsed(url: string): Place | undefined {
  const [, origin, path = ''] = URL_FORM.exec(url) ?? [];
  if (origin === undefined) return undefined;
  return { origin, parts: path.split('/').filter(Boolean).map(decoded) };
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

const encoded = (part: string): string =>
  encodeURIComponent(part.replace(LONE_SURROGATE, '\ufffd'));

/** `.` and `..` followed; `..` above the top stay where the path is relative. */
function resolved(base: readonly string[], more: readonly string[]): readonly string[] {
  const out = [...base];
  for (const part of more) {
    if (part === '.') continue;
    if (part === '..' && out.length > 0 && out.at(-1) !== '..') out.pop();
    else if (part !== '..' || base.length === 0) out.push(part);
  }
  return out;
}

const urlOf = ({ origin, parts }: Place): string =>
  `${origin}/${parts.map((part, index) => (index === 0 && DRIVE.test(part) ? part : encoded(part))).join('/')}`;

/** The way from one file to another; its URL where there is none. */
function relative(from: Place, to: Place): string {
  const folder = from.parts.slice(0, -1);
  if (from.origin !== to.origin || driveOf(from) !== driveOf(to)) return urlOf(to);
  let shared = driveOf(to) === null ? 0 : 1;
  while (
    shared < folder.length &&
    shared < to.parts.length - 1 &&
    folder[shared] === to.parts[shared]
  )
    shared++;
  const up = Array.from({ length: folder.length - shared }, () => '..');
  return [...up, ...to.parts.slice(shared).map(encoded)].join('/');
}

const driveOf = ({ parts }: Place): string | null =>
  DRIVE.test(parts[0] ?? '') ? parts[0]!.toLowerCase() : null;
