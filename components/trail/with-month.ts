import type { ConditionDraft, TrailDraft } from '@/lib/fields/trail/trail-rows';
import { celsiusToKelvin } from '@/lib/units/convert';
import { temperatureText } from '@/lib/units/entry-text';
import type { HistoryJson } from '@/lib/weather/history-json';
import { MONTHS, type Percentile } from '@/lib/words/months';

export type MonthToAdd = HistoryJson['months'][number];

type Added = { readonly month: MonthToAdd; readonly percentile: Percentile };

/**
 * The draft with a month of past winters as one more day; the last is replaced where the table is full. The elevation of
 * the place and the other days stay as they are.
 */
export function withMonth(draft: TrailDraft, { month, percentile }: Added, most: number): TrailDraft {
  const { units, conditions } = draft;
  const words = { p10: 'cold', p50: 'middling', p90: 'mild' } as const;
  const added: ConditionDraft = {
    name: `${MONTHS[month.month - 1]}, ${words[percentile]}`,
    temperature: temperatureText(celsiusToKelvin(month.temperatureC[percentile]), units),
    stationHpa: String(month.pressureHpa.p50),
    humidity: String(Math.round(month.relativeHumidity.p50 * 100)),
  };
  const kept = conditions.filter(({ name, temperature }) => name !== '' || temperature !== '');
  return { ...draft, conditions: [...kept.slice(0, most - 1), added] };
}
