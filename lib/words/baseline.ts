import type { Judged } from '@/lib/carb/judged';
import type { AirStateJson } from '@/lib/contract/air';
import { airFromJson } from '@/lib/contract/air-from-json';
import type { UnitChoice } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { formatElevation, formatTemperature } from '@/lib/units/format';
import { dateText } from './day-text';
import { STATE_WORD } from './grades';
import { settingText } from './settings';

type ProvenJets = {
  readonly mains: readonly number[];
  readonly trim: number | null;
  readonly baseline: { readonly provenOn?: string | undefined };
};

/** "410 400 410 of 10 Jan 2027". */
export function baselineText({ mains, trim, baseline }: ProvenJets): string {
  const jets = settingText({ mains, trim });
  return baseline.provenOn === undefined ? `${jets}, undated` : `${jets} of ${dateText(baseline.provenOn)}`;
}

/** "10 °F, density altitude −3,200 ft". */
export function provenAirText(air: AirStateJson, units: UnitChoice): string {
  const temperature = formatTemperature(celsiusToKelvin(air.temperatureC), units);
  const read = airFromJson(air);
  return read.ok
    ? `${temperature}, density altitude ${formatElevation(read.value.densityAltitude, units)}`
    : temperature;
}

const JUDGED: Readonly<Record<Judged, string>> = {
  edge: 'on the edge of lean',
  right: STATE_WORD.right,
  'size-rich': 'a size rich',
};

export function judgedText(judged: Judged): string {
  return JUDGED[judged];
}
