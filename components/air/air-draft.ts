import type { PressureKind } from '@/lib/air/air';
import type { AirStateJson } from '@/lib/contract/air';
import { pressureSaid } from '@/lib/contract/pressure';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin, hectopascalToPascal } from '@/lib/units/convert';
import { elevationText, percentText, pressureText, temperatureText } from '@/lib/units/entry-text';
import { metre, ratio } from '@/lib/units/quantity';
import { pressureKey } from './pressure-key';

export type HumidityKind = 'unknown' | 'relative' | 'dew-point' | 'frost-point';

/** An air as it is typed, in whatever form it is known. */
export type AirDraft = {
  readonly temperature: string;
  readonly pressureKind: PressureKind;
  readonly pressure: string;
  readonly elevation: string;
  /** What was stood by of the three above (`pressure-key.ts`); empty where nothing was. */
  readonly pressureConfirmed: string;
  readonly humidityKind: HumidityKind;
  /** Percent, or a dew or frost point, by its kind. */
  readonly humidity: string;
};

export const BLANK_AIR: AirDraft = {
  temperature: '',
  pressureKind: 'standard',
  pressure: '',
  elevation: '',
  pressureConfirmed: '',
  humidityKind: 'unknown',
  humidity: '',
};

/** The draft that reads back as `air`. */
export function airDraft(air: AirStateJson, units: UnitChoice): AirDraft {
  const pressure = {
    ...pressureDraft(air, units),
    elevation: air.elevationM === undefined ? '' : elevationText(metre(air.elevationM), units),
  };
  return {
    temperature: temperatureText(celsiusToKelvin(air.temperatureC), units),
    ...pressure,
    pressureConfirmed: air.pressureConfirmed === true ? pressureKey(pressure) : '',
    ...humidityDraft(air, units),
  };
}

function pressureDraft(air: AirStateJson, units: UnitChoice): Pick<AirDraft, 'pressureKind' | 'pressure'> {
  const said = pressureSaid(air);
  if (said === null) return { pressureKind: 'standard', pressure: '' };
  return { pressureKind: said.kind, pressure: pressureText(hectopascalToPascal(said.hpa), units) };
}

function humidityDraft(air: AirStateJson, units: UnitChoice): Pick<AirDraft, 'humidityKind' | 'humidity'> {
  const point = (celsius: number): string => temperatureText(celsiusToKelvin(celsius), units);
  if (air.relativeHumidity !== undefined)
    return { humidityKind: 'relative', humidity: percentText(ratio(air.relativeHumidity)) };
  if (air.dewPointC !== undefined) return { humidityKind: 'dew-point', humidity: point(air.dewPointC) };
  if (air.frostPointC !== undefined) return { humidityKind: 'frost-point', humidity: point(air.frostPointC) };
  return { humidityKind: 'unknown', humidity: '' };
}
