import type { PressureKind } from '@/lib/air/air';
import type { Instant } from '@/lib/time/instant';
import type { Kelvin, Metre, Pascal, Ratio } from '@/lib/units/quantity';

/** One tenth, half and nine tenths of the hours lie below. */
export type Percentiles<Q> = { readonly p10: Q; readonly p50: Q; readonly p90: Q };

/** A calendar month at a place as past years had it, riding hours only. Pressure is station pressure. */
export type PastMonth = {
  /** 1 to 12. */
  readonly month: number;
  readonly hours: number;
  readonly temperature: Percentiles<Kelvin>;
  readonly pressure: Percentiles<Pascal>;
  readonly relativeHumidity: Percentiles<Ratio>;
};

export type PastSeason = {
  readonly elevation: Metre;
  readonly zone: string;
  readonly months: readonly PastMonth[];
  /** The days covered, by stretch. */
  readonly stretches: readonly DateStretch[];
};

/** Calendar dates, both included. */
export type DateStretch = { readonly from: string; readonly to: string };

/** The air at a past moment, between the two hours around it. Station pressure. */
export type PastAir = {
  readonly at: Instant;
  readonly elevation: Metre;
  readonly temperature: Kelvin;
  readonly pressure: Pascal;
  readonly pressureFrom: PressureKind;
  readonly relativeHumidity: Ratio;
};
