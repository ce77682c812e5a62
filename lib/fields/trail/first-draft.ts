import { blankDraft } from '@/lib/fields/table-values';
import { type UnitChoice, US_UNITS } from '@/lib/units/choice';
import { fahrenheitToKelvin } from '@/lib/units/convert';
import { elevationText, temperatureStepText, temperatureText } from '@/lib/units/entry-text';
import { kelvin, kelvinDifference, metre } from '@/lib/units/quantity';
import { NEW_CONDITION, TRAIL, type TrailDraft } from './trail-rows';

type Start = { readonly units: UnitChoice; readonly timezone: string; readonly date: string };

/** What the page shows before anything was typed: an invented day between a valley, a pass and a hut. */
export function firstDraft({ units, timezone, date }: Start): TrailDraft {
  const height = (metres: number) => elevationText(metre(metres), units);
  const celsius = (degrees: number) => temperatureText(kelvin(degrees + 273.15), units);
  const rounded = (metric: string, imperial: string, isImperial: boolean) => (isImperial ? imperial : metric);
  const feet = units.elevation === 'ft';
  const fahrenheit = units.temperature === 'F';
  const blank = blankDraft(TRAIL, units);
  return {
    ...blank,
    elevation: rounded('900', '3000', feet),
    conditions: [
      condition('Spring', 30, units),
      condition('Midwinter', 0, units),
      condition('Deep cold', -30, units),
    ],
    ride: {
      ...blank.ride,
      date,
      timezone,
      places: [
        { name: 'Valley cabin', clock: '08:00', stop: '', elevation: rounded('320', '1050', feet) },
        { name: 'Pass', clock: '10:30', stop: '20', elevation: rounded('1450', '4750', feet) },
        { name: 'Lake hut', clock: '12:30', stop: '45', elevation: rounded('900', '2950', feet) },
        { name: 'Pass again', clock: '15:00', stop: '', elevation: rounded('1450', '4750', feet) },
        { name: 'Valley cabin', clock: '17:00', stop: '', elevation: rounded('320', '1050', feet) },
      ],
      speed: feet ? '20' : '30',
      hours: [
        { clock: '07:00', temperature: rounded('-16', '3', fahrenheit) },
        { clock: '13:00', temperature: rounded('-6', '21', fahrenheit) },
        { clock: '18:00', temperature: rounded('-13', '9', fahrenheit) },
      ],
      hoursElevation: rounded('320', '1050', feet),
      fall: usualFallText(units),
      swapMinutes: '20',
      fuelUse: feet ? '2.4' : '9',
    },
    card: {
      ...blank.card,
      coldest: fahrenheit ? '-40' : celsius(-40),
      warmest: fahrenheit ? '40' : celsius(5),
      step: fahrenheit ? '10' : '5',
      lowest: height(0),
      highest: feet ? '10000' : '3000',
      rise: feet ? '2000' : '500',
    },
  };
}

function condition(name: string, fahrenheit: number, units: UnitChoice) {
  const whole = Math.round((fahrenheit - 32) / 1.8) + 273.15;
  const temperature =
    units.temperature === 'F'
      ? temperatureText(fahrenheitToKelvin(fahrenheit), units)
      : temperatureText(kelvin(whole), units);
  return { ...NEW_CONDITION, name, temperature };
}

/** 6.5 K over 1000 m, 3.6 °F over 1000 ft: the mean fall of the troposphere in the person's units. */
export function usualFallText(units: UnitChoice): string {
  const perThousand = units.elevation === 'ft' ? 6.5 * 0.3048 : 6.5;
  return Number(temperatureStepText(kelvinDifference(perThousand), units)).toFixed(1);
}

/** A draft with an entry in every list: a kept draft of another shape is not taken up. */
export const TRAIL_SHAPE = firstDraft({ units: US_UNITS, timezone: 'UTC', date: '2027-01-16' });
