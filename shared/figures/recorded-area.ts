/** What of the sensor a recording mode records: as given, by its crop, or as much as its shape allows. */
import type { Extent } from '../optics/recorded-pixel.ts';
import { message } from '../words/message.ts';
import type { Bench } from './bench.ts';
import { derive, type Figure, figureOf, notKnown } from './figure.ts';

/** The area, mm: `area`, else the largest part of the sensor in the frame's shape over `crop`. */
export function recordedAreaOf({
  name,
  fields,
  of,
}: NonNullable<Bench['recording']>): Figure<Extent> {
  const { area, crop, resolution } = fields;
  if (area.state !== 'missing') return figureOf(area, name);
  const whole = derive(
    [figureOf(of.fields.sensor, of.name), figureOf(resolution, name)],
    inTheShapeOf,
  );
  if (crop.state === 'missing') return whole;
  return derive([whole, figureOf(crop, name)], ({ width, height }, times) =>
    times >= 1
      ? { width: width / times, height: height / times }
      : notKnown(message`a crop below 1 would record more than the sensor`),
  );
}

/** What a still records: the whole sensor. */
export function stillOf({ name, fields }: NonNullable<Bench['body']>): {
  readonly pixels: Figure<Extent>;
  readonly areaMm: Figure<Extent>;
} {
  const pixels = figureOf(fields.pixels, name);
  return { pixels, areaMm: derive([figureOf(fields.sensor, name), pixels], inTheShapeOf) };
}

/** The largest part of `sensor` with the sides of `frame`: its full width, or its full height. */
function inTheShapeOf(sensor: Extent, frame: Extent): Extent {
  const height = (sensor.width * frame.height) / frame.width;
  return height <= sensor.height
    ? { width: sensor.width, height }
    : { width: (sensor.height * frame.width) / frame.height, height: sensor.height };
}
