import { HOUR_MS } from '@/lib/time/instant';

// Wide enough for any weather there has been, since a true extreme left out is as bad as a wrong number shown. All are
// judgement; beside each stands what it must let pass.

/** An answer is for the middle of a grid cell: half a degree, and its neighbour where the nearest is not land [m]. */
export const FARTHEST_CELL_M = 80_000;

/** A service that is told a height repeats it, rounded at most [m]. */
export const REPEATED_HEIGHT_M = 10;
/** A cell of 2.5 km flattens a summit by several hundred metres; farther up or down it is another mountain [m]. */
export const OWN_HEIGHT_M = 1500;

/** Models run at least every 12 h, offices issue at least twice a day; the recorded answers are up to 10 h old [ms]. */
export const OLDEST_ISSUE_MS = 24 * HOUR_MS;
/** Clocks differ [ms]. */
export const CLOCKS_DIFFER_MS = HOUR_MS;
/** Hours may begin this long before the issue: up to 6 h in recorded grids [ms]. */
export const BEFORE_ISSUE_MS = 10 * HOUR_MS;
/** Hours begin by now, or with the next step [ms]. */
export const LATEST_START_MS = 3 * HOUR_MS;

export const MOISTURE = {
  /** Temperature may be this far from what dew point and humidity make it, on the whole [K]. */
  offset: 1.5,
  /** Where a service moves the temperature to the site and not the humidity: 2,300 m at 6.5 K/km [K]. */
  movedOffset: 15,
  /** One hour may differ by this from the others: rounding to whole °F and whole % [K] ... */
  hour: 4,
  /** ... unless it is very dry, where a rounded humidity says little: then by this in humidity [1]. */
  hourHumidity: 0.08,
  /**
   * Some models give humidity over ice: 10 % of the degrees below freezing at saturation (Murphy & Koop 2005: 0.9 K at
   * -10 °C, 4 K at -40 °C) [K/K].
   */
  perDegreeOfFrost: 0.12,
  /** Below 1 % at every hour, with the rounding of a percent: a fraction that was taken for a percentage [1]. */
  fraction: 0.0105,
  /** Highest dew point that has been observed: 35 °C, Dhahran 2003 (from memory) [°C]. */
  highestDewPointC: 36,
} as const;

/**
 * Degrees Fahrenheit that are called Celsius stretch the gap between temperature and dew point by 1.8. The air looks
 * 25 K warmer too, so the humidity asks for a gap a fifth to two fifths wider. That leaves 1.3 to 1.5 over a day's rise
 * and fall. Right answers, recorded and synthetic, lie at 1.0 give or take 0.1.
 */
export const STRETCH = {
  most: 1.22,
  /** Dew point and temperature swapped make -1. */
  least: -0.5,
  /** Fewer hours, or hours that hardly differ, say nothing. */
  fewestHours: 24,
  /** Standard deviation of the gap [K]. */
  leastSpread: 0.4,
  /** Share of the gap's variance that goes with the humidity's; less is another trouble than a stretched scale. */
  leastShare: 0.8,
} as const;

export const PRESSURE = {
  /** Rounding of both numbers to 0.1 hPa and then some [Pa]. */
  least: 50,
  /**
   * Reductions to sea level differ with the temperature they take for the column: 40 K make 1.5 hPa in 100 m [Pa/m].
   * Sea-level pressure in the place of station pressure is 12 hPa in 100 m.
   */
  perMetre: 1.5,
  /** One hour may differ by so much more from the others: 0.6 % of density, and no mix-up is that small [Pa]. */
  hour: 600,
} as const;

/**
 * The same by way of the pressures: a service that makes station pressure from sea-level pressure with the hour's
 * temperature tells that temperature twice. In °F it moves 1.8 times as far.
 */
export const SWING = {
  most: 1.4,
  fewestHours: 24,
  /** Standard deviation of the temperature in the pressures [K]. */
  leastSpread: 1,
  /** Where rounding or another way of reducing hides the temperature, nothing is said. */
  leastShare: 0.9,
} as const;

/** A change between neighbours, and how it grows with the hours between them. */
export type JumpLimit = { readonly first: number; readonly perHour: number; readonly most: number };

/**
 * There and back, both larger than this within the steps on either side [K]. Fronts of 15 K/h and a chinook that comes
 * and goes pass; steps of six hours hold a desert's whole day.
 */
export const TEMPERATURE_SPIKE: JumpLimit = { first: 18, perHour: 4, most: 40 };
/** One way, to stay [K]. Largest: 27 K in minutes, Spearfish 1943; 47 K in 12 h, Fairfield 1924 (from memory). */
export const TEMPERATURE_STEP: JumpLimit = { first: 35, perHour: 2, most: 60 };
/** There and back [Pa]: a hurricane's eye passes at some 10 hPa/h. */
export const PRESSURE_SPIKE: JumpLimit = { first: 1200, perHour: 800, most: 6000 };
/** One way [Pa]. */
export const PRESSURE_STEP: JumpLimit = { first: 3000, perHour: 800, most: 8000 };

/** A temperature that does not move by more than this is the same [K]. */
export const SAME_K = 0.05;
/** All hours the same, over at least this [ms]. */
export const FLAT_WHOLE_MS = 24 * HOUR_MS;
/** A part of the hours the same: whole °F under fog at sea may stand for a day [ms]. */
export const FLAT_PART_MS = 48 * HOUR_MS;

/** With more hours than this to be left out, the rest is not believed either [1]. */
export const MOST_LEFT_OUT = 0.25;
