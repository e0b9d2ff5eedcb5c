/** `lamella bring-back`: lays a filled-in sheet or a review into its plan, after showing what that changes. */
import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { layClips } from '../../shared/bring-back/bring-clips.ts';
import { propose, proposedWords } from '../../shared/bring-back/propose.ts';
import { readBack } from '../../shared/bring-back/read-back.ts';
import { MOST_CHARACTERS } from '../../shared/bring-back/read-parts.ts';
import { inertLine } from '../../shared/report/inert.ts';
import { later, message } from '../../shared/words/message.ts';
import { COULD_NOT_RUN, FOUND, NOTHING_FOUND } from '../exit-status.ts';
import { decode } from '../files/decode.ts';
import { NotReplaced, replaceFile } from '../files/replace-file.ts';
import { pathOfUri } from '../files/uri.ts';
import { cardClips } from '../media/card-clips.ts';
import { patchOf } from '../patch.ts';
import { complain, type Terminal } from '../terminal.ts';
import { type Command, folderIn, ROOT, type Surroundings } from './command.ts';
import { openNamed } from './open-plan.ts';
import { WrongUse } from './options.ts';
import { whileReading } from './test-clip.ts';
import { reasonNotWritten } from './write-output.ts';

type Given = Extract<ReturnType<typeof readBack>, { ok: true }>;

/** UTF-8 takes at most this many bytes for a UTF-16 unit. */
const MOST_BYTES = 3 * MOST_CHARACTERS;

/** What one source changes in the plan: a diff of its own, which a reader may apply or leave. */
interface Part {
  readonly text: string;
  /** Lines for people. */
  readonly told: readonly string[];
  /** Something was left that somebody has to look at. */
  readonly hasLeft: boolean;
}

export const bringBack: Command = {
  name: 'bring-back',
  usage: [
    'lamella bring-back DAY PLAN [options]',
    'lamella bring-back REVIEW PLAN [options]',
    'lamella bring-back [DAY] PLAN --clips DIR [options]',
  ],
  about: later`Brings the text of a filled-in sheet or of a review into the plan. Prints the changes as a diff; --write makes them.`,
  options: {
    write: { about: later`Writes the plan instead of printing the diff.` },
    propose: {
      about: later`Also proposes what the day shows: a body's \`bench\` row from exposures found, a subject's lifetime from those counted.`,
    },
    clips: {
      value: later`folder`,
      shown: 'DIR',
      about: later`Folder of a card. Its clips are matched to takes by their times, and proposed as their files.`,
    },
    root: ROOT,
  },
  async run(parsed, surroundings) {
    const { rest, options } = parsed;
    const { terminal } = surroundings;
    const isCard = options.clips !== undefined;
    if (rest.length > 2 || rest.length < (isCard ? 1 : 2))
      throw new WrongUse(
        message`bring-back takes a day or a review, and a plan, but got ${rest.length}.`,
      );
    const folder = await folderIn(terminal, 'clips', parsed);
    const givenFile = rest.length === 2 ? rest[0] : undefined;
    const given = givenFile === undefined ? null : await openGiven(givenFile, terminal);
    if (givenFile !== undefined && given === null) return COULD_NOT_RUN;
    const day = given?.day ?? null;
    const opened = await openNamed(rest.at(-1) ?? '', parsed, surroundings);
    if (opened === null) return COULD_NOT_RUN;
    const { plans, id } = opened;
    const name = plans.nameOf(id);
    const before = plans.text(id) ?? '';
    const file = pathOfUri(id) ?? '';
    const parts: Part[] = [];
    const latest = (): string => parts.at(-1)?.text ?? before;
    const brought = given === null ? null : given.lay(before, path.basename(file));
    if (brought) parts.push(partOf(brought, (line) => line));
    const card = folder === null ? null : await readCard(folder, path.dirname(file), surroundings);
    if (card === 'stopped') return COULD_NOT_RUN;
    const laid = card && layClips(card.clips, latest(), day);
    if (card && laid) {
      const unread = card.unread.map(({ file: clip, why }) => message`${clip}: ${why}.`);
      parts.push(partOf({ ...laid, left: [...laid.left, ...unread] }, proposedWords));
    }
    if ((given !== null && brought === null) || (card !== null && laid === null)) {
      complain(terminal, message`${name} has errors in its text. Fix them first.`);
      return COULD_NOT_RUN;
    }
    const proposed = day && propose(day, latest());
    // Also where nothing can be proposed: what somebody counted or read is never passed over in silence.
    const isWaiting =
      options.propose !== true &&
      proposed !== null &&
      (proposed.text !== latest() || proposed.kept.length + proposed.left.length > 0);
    if (proposed && options.propose === true) parts.push(partOf(proposed, proposedWords));
    const text = latest();
    if (options.write === true && text !== before) {
      try {
        await replaceFile(file, plans.rootOf(id), before, text);
      } catch (cause) {
        const why = cause instanceof NotReplaced ? cause.message : reasonNotWritten(name, cause);
        complain(terminal, message`${name} can't be written: ${why}.`);
        return COULD_NOT_RUN;
      }
    } else
      parts.forEach((part, index) => {
        const from = parts[index - 1]?.text ?? before;
        if (from !== part.text) terminal.out(patchOf(name, from, part.text));
      });
    const told = parts.flatMap((part) => part.told);
    if (isWaiting)
      told.push(message`The day also shows something of body or subject; --propose shows it.`);
    told.push(
      text === before
        ? message`Nothing to bring back.`
        : options.write === true
          ? message`${name} is written.`
          : message`Nothing was written; --write makes the changes.`,
    );
    for (const line of told) terminal.err(`${inertLine(line)}\n`);
    return parts.some(({ hasLeft }) => hasLeft) ? FOUND : NOTHING_FOUND;
  },
};

interface Made {
  readonly text: string;
  readonly done: readonly string[];
  readonly kept?: readonly string[];
  readonly left: readonly string[];
}

const partOf = ({ text, done, kept = [], left }: Made, words: (line: string) => string): Part => ({
  text,
  told: [...done.map(words), ...kept, ...left],
  hasLeft: left.length > 0,
});

async function readCard(folder: string, plan: string, surroundings: Surroundings) {
  const { terminal } = surroundings;
  const card = await whileReading(surroundings, (reader, signal) =>
    cardClips(folder, plan, reader, signal, (done, of, clip) =>
      terminal.progress(inertLine(message`${done + 1} of ${of}: ${clip}`)),
    ),
  );
  return card.isStopped ? 'stopped' : card;
}

/** @returns null where it can't be read, which has been said */
async function openGiven(file: string, terminal: Terminal): Promise<Given | null> {
  const refuse = (...whys: readonly string[]): null => {
    for (const why of whys) complain(terminal, `${file}: ${why}`);
    return null;
  };
  const bytes = await bytesOf(file, terminal);
  if (typeof bytes === 'string') return refuse(bytes);
  if (bytes.length > MOST_BYTES) return refuse(message`it is too large`);
  const decoded = decode(bytes);
  if (!decoded.ok) return refuse(message`it is not UTF-8`);
  const read = readBack(decoded.text);
  return read.ok ? read : refuse(...read.whys);
}

/** `-` is standard input. @returns why it can't be read, where it can't */
async function bytesOf(file: string, terminal: Terminal): Promise<Uint8Array | string> {
  if (file === '-') return terminal.input(MOST_BYTES);
  try {
    const named = path.resolve(terminal.cwd, file);
    const found = await stat(named);
    if (!found.isFile()) return message`not a file`;
    if (found.size > MOST_BYTES) return message`it is too large`;
    return await readFile(named);
  } catch (cause) {
    return (cause as NodeJS.ErrnoException).code === 'ENOENT'
      ? message`no such file`
      : message`it can't be read`;
  }
}
