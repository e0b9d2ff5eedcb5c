/**
 * The gathered inputs of one shot, called its bench: its fields, the entries that they name, and
 * the inputs of every figure. It is plain data and nothing else. To ask "what if", substitute an
 * input: `figuresOf(substitute(bench, { marked: known(11) }))`.
 */
import type { Chain } from '../optics/arrangement.ts';
import type { ChainPart } from '../optics/parts.ts';
import type { Extent } from '../optics/recorded-pixel.ts';
import type {
  Body,
  Deliver,
  Filter,
  Head,
  Lens,
  Light,
  Rail,
  Recording,
  Rig,
  Shot,
  Stand,
  Subject,
  TimeLapse as TimeLapseFields,
} from '../plan/generated/types.ts';
import type { FileId, Place } from '../plan/place.ts';
import type { Shutter } from '../quantity/recording.ts';
import type { Constants } from './constants.ts';
import type { Figure } from './figure.ts';
import type { Named } from './named.ts';
import type { NamedPart } from './parts.ts';
import type { Offer, PlanReader } from './reader.ts';
import type { WeighedPart } from './shot-figures.ts';

/** A light of the shot, with the shot's own changes applied. */
export interface LightInUse {
  readonly name: string;
  readonly fields: Light;
  /** Its position when it was read or measured. */
  readonly readAt: Light['at'];
  /** Stops by which this shot dims it; negative is brighter. */
  readonly dimmedStops: Figure<number>;
  /** Stops that gels, sheet and diffuser of this shot take; negative: it takes off the light's sheet. */
  readonly gelStops: Figure<number>;
  /** Polarising sheets that this shot puts on it: 1, 0, or −1 where it takes off the light's own. */
  readonly sheetsAdded: number;
  /** This shot puts a diffuser before it, which takes from the brightness that it has without. */
  readonly isDiffused: boolean;
  /** The shot gives its brightness: whatever is before it then takes nothing of that. */
  readonly isRebrightened: boolean;
  readonly gels: readonly string[];
  /** What they shift its colour by, mired; its colour in `fields` is behind them. null: not known. */
  readonly gelShift: number | null;
  /** Gels so blue that they leave no colour temperature: their shift and the light's own, mired. */
  readonly tooBlue: { readonly shift: number; readonly mired: number; readonly at: Place } | null;
  /** The colour that this shot sets a bi-colour light to. */
  readonly setColour: Light['colour-temperature'] | undefined;
  /** The plan says that it hangs overhead, or a boom carries it and the plan doesn't say otherwise. */
  readonly isOverhead: boolean;
  /** What it stands on or hangs from, where the plan says. */
  readonly stand: Named<Stand> | undefined;
  /** Where the shot names it. */
  readonly at: Place;
}

export interface Bench {
  readonly file: FileId;
  readonly shot: string;
  /** The shot's entry. */
  readonly at: Place;
  readonly fields: Shot;
  readonly rigName: string | undefined;
  readonly rig: Named<Rig> | undefined;
  readonly body: Named<Body> | undefined;
  readonly lens: Named<Lens> | undefined;
  readonly subject: Named<Subject> | undefined;
  readonly recording: (Named<Recording> & { readonly of: Named<Body> }) | undefined;
  readonly deliver: Deliver | undefined;

  readonly offer: Offer;
  readonly constants: Constants;
  /** The fields that it was read from, so that it can be read again with other values. */
  readonly source: { readonly reader: PlanReader; readonly shot: Named<Shot> };

  readonly parts: Figure<readonly NamedPart[]>;
  readonly chainParts: Figure<readonly ChainPart[]>;
  readonly chain: Figure<Chain>;
  /** Smallest and largest magnification of the rig. */
  readonly reach: Figure<readonly [least: number, most: number]>;
  readonly weighedParts: Figure<readonly WeighedPart[]>;
  /** Head and stand of the rig in this shot, as far as they are named. */
  readonly carriers: {
    readonly head?: Named<Head> | undefined;
    readonly stand?: Named<Stand> | undefined;
    readonly rail?: Named<Rail> | undefined;
  };
  readonly lights: Figure<readonly LightInUse[]>;
  readonly filters: Figure<readonly Named<Filter>[]>;

  readonly recordedAreaMm: Figure<Extent>;
  readonly recordedPixels: Figure<Extent>;
  /** The frames that the shot takes at intervals; null: it records as usual. */
  readonly timeLapse: TimeLapse | null;
  /** The frames that the shot stacks; null: it has no stack. */
  readonly stack: Stack | null;
  /** Frames per second of real time; stills of a stack have none. */
  readonly recordRate: Figure<number>;
  readonly deliveredPixels: Figure<Extent>;

  /** Total magnification that the shot needs; calculated from its field if the shot gives that. */
  readonly wantedMagnification: Figure<number>;
  /** The ring setting that the shot gives instead: an end of the ring, or a distance in mm. */
  readonly wantedRing: Figure<number | 'closest' | 'infinity'>;
  /** Which of field, magnification and ring the shot gives; undefined: none. */
  readonly wantedAt: Place | undefined;

  /** The marked f-number, as written. */
  readonly marked: Figure<number>;
  readonly apertureRange: Figure<{ readonly from: number; readonly to: number }>;
  /** Third-stop marks inside the lens's range; empty where it isn't known. */
  readonly marksOnLens: readonly number[];
  readonly shutter: Figure<Shutter>;
  readonly iso: Figure<number | 'auto'>;
  readonly isoLimits: Readonly<Record<'lowest' | 'highest' | 'cleanTo', Figure<number>>>;
  readonly bodyShows: 'marked' | 'effective' | undefined;
  /** Away from facing the lens, rad; 0 where the shot gives none. */
  readonly tiltRad: Figure<number>;
  readonly tiltAxis: 'level' | 'upright';
  /** As given in the plan, mm. If it is unknown, the usual one is calculated. */
  readonly givenCircleMm: Figure<number>;
  readonly mainsHz: Figure<number>;
  readonly readThroughBareLens: boolean;
  /** The shot's checks by name: its own, those of every shot, and those of the day. */
  readonly checks: ReadonlyMap<string, 'open' | 'done'>;
  /** Those of them that are made once a day, and that the shot doesn't list itself. */
  readonly checksOfDay: ReadonlySet<string>;
  /** Some of them can't be read, so a check that is not listed may still be there. */
  readonly checksUnread: boolean;
  /** Clips of the shot are listed. */
  readonly hasClips: boolean;
}

/** Frames at intervals. */
export interface TimeLapse {
  /** Single stills, in the sensor's own shape; else a clip that the body writes. */
  readonly isStills: boolean;
  readonly intervalS: Figure<number>;
  readonly frames: Figure<number>;
  /** Real time of all of them. */
  readonly spanS: Figure<number>;
  /** As written; null: it can't be read. */
  readonly fields: TimeLapseFields | null;
}

/** Frames focused one behind the other. */
export interface Stack {
  /** Single stills of the whole sensor; else frames of a clip. */
  readonly isStills: boolean;
  readonly moves: Figure<'rail' | 'ring'>;
  /** Share of the depth of field, 0 to below 1. */
  readonly overlap: Figure<number>;
  /** As many as are written; undefined: as many as are needed. */
  readonly frames: Figure<number | undefined>;
  readonly settleS: Figure<number>;
  readonly at: Place;
}

/** The same bench with some inputs exchanged. */
export const substitute = (bench: Bench, inputs: Partial<Bench>): Bench => ({
  ...bench,
  ...inputs,
});
