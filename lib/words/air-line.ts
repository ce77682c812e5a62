import { dataAge, hoursProvenance } from '@/lib/hours/provenance';
import type { HourSeries } from '@/lib/hours/series';
import type { Standing } from '@/lib/standing/standing';
import type { UnitChoice } from '@/lib/units/choice';
import { formatElevation, formatPressure, formatTemperature } from '@/lib/units/format';
import { ageSinceText } from './provenance';
import { runName } from './runs';

/** The air of now on one line, and what it rests on. */
export type AirLine = {
  /** "13 °F", "28.59 inHg" (station pressure), "DA −1,640 ft"; before them "Round 1", where no hour says anything of now. */
  readonly facts: readonly string[];
  /** "invented", "typed", "fresh: 2 h", "no signal, old: 3 h 22 min". */
  readonly source: string;
  readonly age: ReturnType<typeof dataAge> | 'invented';
};

type Told = {
  readonly series: HourSeries;
  readonly demo: boolean;
  /** What hinders a newer forecast, in two words; null: nothing does. */
  readonly fault: string | null;
};

export function airLine(standing: Standing, units: UnitChoice, { series, demo, fault }: Told): AirLine {
  const { airNow, mixture, plan, now } = standing;
  const told = hoursProvenance(series);
  const age = demo ? 'invented' : dataAge(told, now);
  const source = demo ? 'invented' : ageSinceText(told, now);
  const run = mixture?.run ?? null;
  return {
    facts:
      airNow === null
        ? []
        : [
            ...(run === null ? [] : [runName(plan, run)]),
            formatTemperature(airNow.temperature, units),
            formatPressure(airNow.pressure, units),
            `DA ${formatElevation(airNow.densityAltitude, units)}`,
          ],
    source: fault === null ? source : `${fault}, ${source}`,
    age,
  };
}
