import type { FieldGroup, FieldRow, FieldRows, ValuesOf } from '@/lib/fields/field-row';
import { isNumberKind, NUMBER_KINDS } from '@/lib/fields/number-kinds';
import type { UnitChoice } from '@/lib/units/choice';
import { CONDITION, RIDE_HOUR, RIDE_PLACE, TRAIL, type TrailDraft } from './trail-rows';

type Change = { readonly from: UnitChoice; readonly to: UnitChoice };

/** A text in other units; what cannot be read, or has no unit that is chosen, stays as it was typed. */
function textInUnits({ kind }: FieldRow, text: string, { from, to }: Change): string {
  if (!isNumberKind(kind) || kind === 'number' || kind === 'percent') return text;
  const read = NUMBER_KINDS[kind].read(text, from);
  return read.ok ? NUMBER_KINDS[kind].write(read.value, to) : text;
}

function inUnits<R extends FieldRows, V extends ValuesOf<R>>(
  { rows }: FieldGroup<R>,
  values: V,
  change: Change,
): V {
  const turned = Object.entries<FieldRow>(rows).map(([key, row]) => {
    const value = values[key];
    return [key, typeof value === 'string' ? textInUnits(row, value, change) : value];
  });
  return { ...values, ...Object.fromEntries(turned) };
}

/** The same draft in other units; what cannot be read stays as it was typed. */
export function draftInUnits(draft: TrailDraft, units: UnitChoice): TrailDraft {
  const change = { from: draft.units, to: units };
  const { ride, card } = draft;
  return {
    ...inUnits(TRAIL.top, draft, change),
    units,
    conditions: draft.conditions.map((each) => inUnits(CONDITION, each, change)),
    ride: {
      ...inUnits(TRAIL.ride, ride, change),
      places: ride.places.map((place) => inUnits(RIDE_PLACE, place, change)),
      hours: ride.hours.map((hour) => inUnits(RIDE_HOUR, hour, change)),
    },
    card: inUnits(TRAIL.card, card, change),
  };
}
