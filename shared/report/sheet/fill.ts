/** What the page's script has to know of the sheet that it fills in: names, numbers and words. */
import type { Check, Setting, Sheet, ShotSheet } from '../../api/sheet.ts';
import { message } from '../../words/message.ts';
import { asciiJson } from '../ascii-json.ts';
import { markOf } from '../mark.ts';
import { stateWords } from './words.ts';

export interface FillData {
  /** The plan's file, without its folder. */
  readonly plan: string;
  /** Of all that is filled in; another plan, or another state of it, has another. */
  readonly mark: string;
  /** Names of shots in the order of the day. */
  readonly order: readonly string[];
  readonly once: readonly FillCheck[];
  readonly shots: readonly FillShot[];
  readonly measurements: readonly FillMeasurement[];
  readonly words: FillWords;
}

export interface FillCheck {
  readonly name: string;
  readonly done: boolean;
  /** Of a check that the plan has done: its date, and who did it. */
  readonly at?: string;
  readonly by?: string;
}

export interface FillShot {
  readonly name: string;
  /** In the order of their boxes. */
  readonly checks: readonly FillCheck[];
  /** What the shot comes to with so many of its checks open. */
  readonly states: readonly string[];
  /** Takes that are planned. */
  readonly takes: number;
  readonly takeS: number | null;
  readonly lifeS: ShotSheet['lifeS'];
  /** What can be set otherwise, with what the plan has. */
  readonly settings: readonly Pick<Setting, 'key' | 'label' | 'value'>[];
  /** As the plan writes them, by key. */
  readonly planned: ShotSheet['planned'];
  readonly exposureAsked: ShotSheet['exposureAsked'];
  readonly lifetimeAsked: ShotSheet['lifetimeAsked'];
}

export interface FillMeasurement {
  readonly lens: string;
  readonly given: { readonly with: readonly string[]; readonly ring: string };
  /** In the order of the boxes; null: the box is not filled in here. */
  readonly boxes: readonly ({
    readonly key: string;
    readonly label: string;
    readonly unit: string | null;
  } | null)[];
}

type FillWords = ReturnType<typeof fillWords>;

export const fillText = (sheet: Sheet): string => asciiJson(fillData(sheet));

function fillData({ title, file: plan, once, order, shots, measurements }: Sheet): FillData {
  const names = shots.map(({ name }) => name);
  const ordered = order.steps.map(({ shot }) => shot);
  const filled = {
    order: [...ordered, ...names.filter((name) => !ordered.includes(name))],
    once: once.map(checkOf),
    shots: shots.map(shotOf),
    measurements: measurements.map(({ lens, given, boxes }) => ({
      lens,
      given,
      boxes: boxes.map(({ key, label, unit }) => (key === null ? null : { key, label, unit })),
    })),
  };
  const mark = markOf(JSON.stringify([title, plan, filled]));
  return { plan, mark, ...filled, words: fillWords() };
}

function checkOf({ name, done, by }: Check): FillCheck {
  const found = done ? /^(\d{4}-\d\d-\d\d)(?:, (.+))?$/.exec(by ?? '') : null;
  const [, at, who] = found ?? [];
  return { name, done, ...(at !== undefined && { at }), ...(who !== undefined && { by: who }) };
}

/** Keys of a shot that a camera or a hand sets anew for a take. */
const SET: ReadonlySet<string> = new Set(['aperture', 'shutter', 'iso', 'white-balance', 'tilt']);

function shotOf(shot: ShotSheet): FillShot {
  const { name, state, lacks, checks, takes, takeS, lifeS, settings } = shot;
  const { planned, exposureAsked, lifetimeAsked } = shot;
  return {
    name,
    checks: checks.map(checkOf),
    states: [...checks, null].map((_, open) =>
      stateWords({
        state,
        lacks,
        checks: checks.map((check, index) => ({ ...check, done: index >= open })),
      }),
    ),
    takes,
    takeS,
    lifeS,
    settings: settings
      .filter(({ key, follows }) => SET.has(key) && !follows)
      .map(({ key, label, value }) => ({ key, label, value })),
    planned,
    exposureAsked,
    lifetimeAsked,
  };
}

/** `{0}` stands where the script puts a name or a number. */
const fillWords = () => {
  const [first, second] = ['{0}', '{1}'];
  return {
    day: message`The day`,
    takes: message`Takes`,
    kept: message`${first} of ${second} kept`,
    keptOnly: message`${first} kept`,
    start: message`Start take ${first}`,
    stop: message`Stop take ${first}`,
    planned: message`planned ${first} s`,
    lasts: message`usually lasts ${first} s or more`,
    lifeStart: message`Start lifetime`,
    lifeStop: message`Stop lifetime`,
    lasted: message`lasted ${first} s`,
    lifeCounted: message`counted ${first} s`,
    lifeRemove: message`Remove last count`,
    exposure: message`Exposure found, such as 0.3 under`,
    take: message`Take ${first}`,
    keep: message`Keep`,
    reject: message`Reject`,
    keptMark: message`kept`,
    rejectedMark: message`rejected`,
    running: message`running`,
    clip: message`Clip file or number`,
    note: message`Remark`,
    used: message`Best part, such as 40 to 52 s`,
    different: message`Set differently`,
    remove: message`Remove take`,
    sure: message`Tap again to remove`,
    next: message`Next: ${first}`,
    allDone: message`All shots done`,
    save: message`Save`,
    by: message`Initials for checks`,
    out: message`Save the day`,
    outAbout: message`Bring this text back into the plan with "lamella bring-back".`,
    text: message`Text of the day`,
    code: message`The day as a QR code`,
    codeAbout: message`Scan this code to copy the text to another device.`,
    codeTooLong: message`The text is too long for one QR code. Use Download or Copy.`,
    download: message`Download`,
    copy: message`Copy`,
    copied: message`The text was copied.`,
    notCopied: message`The browser did not copy it. Select the text and copy it by hand.`,
    close: message`Close`,
    clear: message`Clear the sheet`,
    clearSure: message`Tap again to clear everything`,
    notKept: message`This browser does not keep what you fill in. Save the day before you close the page.`,
    full: message`The browser's storage is full. Save the day before you close the page.`,
    broken: message`Some entries can't be read. They are kept as they are:`,
    other: message`This browser also holds entries for another version of this plan. They are not shown here.`,
    otherOut: message`Save those entries`,
    tooMany: message`No more than ${first} takes a shot are kept here.`,
  };
};
