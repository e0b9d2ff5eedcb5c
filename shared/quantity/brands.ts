/**
 * Branded numbers: a millimetre can't be passed for a second. The brand exists for the compiler
 * only; at run time each is a plain number in the unit named here.
 */
declare const unit: unique symbol;
type In<U extends string> = number & { readonly [unit]: U };

/** Millimetres. */
export type Mm = In<'mm'>;
/** Nanometres; thickness of films only. */
export type Nm = In<'nm'>;
/** Seconds. */
export type Sec = In<'s'>;
/** Seconds from midnight. */
export type TimeOfDay = In<'s of the day'>;
/** Radians. */
export type Rad = In<'rad'>;
/** Illuminance, lux. */
export type Lux = In<'lx'>;
/** Luminance, cd/m². */
export type Nit = In<'cd/m2'>;
/** Colour temperature, kelvin. */
export type Kelvin = In<'K'>;
/** Mired: a million over kelvin; here a difference of two. */
export type Mired = In<'mired'>;
/** Kilograms. */
export type Kg = In<'kg'>;
/** Stops: factors of two of light. */
export type Stops = In<'stops'>;
/** Hertz. */
export type Hertz = In<'Hz'>;
/** Watts. */
export type Watt = In<'W'>;
/** Dioptres, 1/m. */
export type Dioptre = In<'dpt'>;
/** f-number N: focal length over entrance pupil diameter. */
export type FNumber = In<'f-number'>;
/** Arithmetic ISO speed S. */
export type Iso = In<'ISO'>;
/** Size of the image over size of the subject. */
export type Magnification = In<'magnification'>;
/** A converter's factor. */
export type Factor = In<'factor'>;
/** A fraction: 50 % is 0.5. */
export type Fraction = In<'fraction'>;
/** Millimetres per second. */
export type MmPerSec = In<'mm/s'>;
/** Radians per second. */
export type RadPerSec = In<'rad/s'>;
/** Bits per second. */
export type BitsPerSec = In<'bit/s'>;
/** Bytes. */
export type Bytes = In<'byte'>;
/** Beats per minute. */
export type Bpm = In<'bpm'>;
/** Beats of the music. */
export type Beats = In<'beats'>;
/** A number without a unit. */
export type Ratio = In<'ratio'>;
/** A whole number of things. */
export type Count = In<'count'>;

/** A stretch between two values of one kind. */
export interface Range<T> {
  readonly from: T;
  readonly to: T;
}
