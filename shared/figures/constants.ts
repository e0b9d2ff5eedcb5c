/** What calculations rest on that no key of a plan says: see shared/assumptions/. */
import {
  DIFFUSER_LOSS,
  INCIDENT,
  IRIS_KEEPS_SIZE,
  POLARISER_LOSS,
  REFLECTED,
  STILL_BYTES_PER_PIXEL,
} from '../assumptions/table.ts';
import type { EntryId, FileId } from '../plan/place.ts';

/** How one entry stands along the axes of what its bench leaves uncertain, in standard deviations. */
export interface EntryStands {
  readonly file: FileId;
  readonly entry: EntryId;
  readonly stands: readonly number[];
}

export interface Constants {
  /** K of a reflected-light meter. */
  readonly reflected: number;
  /** C of an incident-light meter. */
  readonly incident: number;
  /** 0: the f-number holds as a lens shortens its focal length up close; 1: its iris keeps its size. */
  readonly irisKeepsSize: number;
  /** Stops that a polarising sheet takes of a light that is not polarised. */
  readonly sheetStops: number;
  /** Stops that a diffuser takes. */
  readonly diffuserStops: number;
  /** Bytes that a still needs on the card for each of its pixels, where its size isn't given. */
  readonly stillBytesPerPixel: number;
  /**
   * How the lens of the rig stands along the axes of what its bench leaves uncertain, in standard
   * deviations; null: in its middle, and without a bench as its data say.
   */
  readonly lensStands: readonly number[] | null;
  /** Of lights, bodies, converters and close-up lenses with a bench; those left out are in their middle. */
  readonly entryStands: readonly EntryStands[];
}

export const CONSTANTS: Constants = {
  reflected: REFLECTED.middle,
  incident: INCIDENT.middle,
  irisKeepsSize: IRIS_KEEPS_SIZE.middle,
  sheetStops: POLARISER_LOSS.middle,
  diffuserStops: DIFFUSER_LOSS.middle,
  stillBytesPerPixel: STILL_BYTES_PER_PIXEL.middle,
  lensStands: null,
  entryStands: [],
};
