import { type FieldReader, ifTyped } from '@/components/draft/field-reader';
import type { UnitChoice } from '@/lib/units/choice';
import { metre } from '@/lib/units/quantity';

export type RideReader = { readonly fields: FieldReader; readonly units: UnitChoice };

const ELEVATION = { least: -430, most: 6000 } as const;

export function rideMinutes(
  text: string,
  { name, fields }: { readonly name: string; readonly fields: FieldReader },
): number | undefined {
  const minutes = ifTyped(text, () => fields.number({ name, text, example: '20' }));
  if (minutes === undefined || (minutes >= 0 && minutes <= 600)) return minutes;
  fields.complain(name, 'Minutes from 0 to 600.');
  return undefined;
}

export function heightOf(text: string, name: string, { fields }: RideReader) {
  const height = fields.elevationM({ name, text, example: '900' });
  if (height === undefined) return null;
  if (height >= ELEVATION.least && height <= ELEVATION.most) return metre(height);
  fields.complain(name, 'Outside the elevations of roads and trails. Check the number and its unit.');
  return null;
}
