import type { Result } from '@/lib/result/result';
import type { UnitChoice } from '@/lib/units/choice';
import { readElevation, readTemperature, readTemperatureStep } from '@/lib/units/entry';
import { elevationText, numberText, temperatureStepText, temperatureText } from '@/lib/units/entry-text';
import { kelvinDifference } from '@/lib/units/quantity';
import type { TrailDraft } from './trail-draft';

/** Metres in the thousand that a fall is counted over, and kilometres in the mile or kilometre of a way. */
export const THOUSAND_M = { ft: 304.8, m: 1000 } as const;
export const WAY_KM = { ft: 1.609344, m: 1 } as const;

/** The same draft in other units; what cannot be read stays as it was typed. */
export function draftInUnits(draft: TrailDraft, units: UnitChoice): TrailDraft {
  const before = draft.units;
  const temperature = (text: string) =>
    turned(text, readTemperature(text, before.temperature), (t) => temperatureText(t, units));
  const step = (text: string) =>
    turned(text, readTemperatureStep(text, before.temperature), (t) => temperatureStepText(t, units));
  const height = (text: string) =>
    turned(text, readElevation(text, before.elevation), (h) => elevationText(h, units));
  const way = (text: string) => scaled(text, WAY_KM[before.elevation] / WAY_KM[units.elevation]);
  const fall = (text: string) =>
    turned(text, readTemperatureStep(text, before.temperature), (t) =>
      temperatureStepText(
        kelvinDifference((t * THOUSAND_M[units.elevation]) / THOUSAND_M[before.elevation]),
        units,
      ),
    );
  const { ride, card } = draft;
  return {
    ...draft,
    units,
    elevation: height(draft.elevation),
    conditions: draft.conditions.map((each) => ({ ...each, temperature: temperature(each.temperature) })),
    ride: {
      ...ride,
      places: ride.places.map((place) => ({ ...place, elevation: height(place.elevation) })),
      heightStart: height(ride.heightStart),
      heightMiddle: height(ride.heightMiddle),
      heightEnd: height(ride.heightEnd),
      hours: ride.hours.map((hour) => ({ ...hour, temperature: temperature(hour.temperature) })),
      hoursElevation: height(ride.hoursElevation),
      speed: way(ride.speed),
      distance: way(ride.distance),
      fall: fall(ride.fall),
    },
    card: {
      ...card,
      coldest: temperature(card.coldest),
      warmest: temperature(card.warmest),
      step: step(card.step),
      lowest: height(card.lowest),
      highest: height(card.highest),
      rise: height(card.rise),
    },
  };
}

function turned<Q>(text: string, read: Result<Q, unknown>, write: (quantity: Q) => string): string {
  return read.ok ? write(read.value) : text;
}

function scaled(text: string, by: number): string {
  const value = Number(text.replace(',', '.'));
  return text.trim() === '' || !Number.isFinite(value) ? text : numberText(value * by, 2);
}
