/**
 * Every number of the planner that is a judgement and not a law, in one place. None of these is published; the sizes
 * lean on what verification studies of 2 m temperature say in general (errors of 2 to 3 K that hardly grow over the
 * first day, ensembles too narrow near the ground, corrections from one reading good for a few hours). Measure your
 * own site before trusting them further.
 */

/** Standard deviation of a forecast's temperature by lead time. Judgement. */
export const TEMPERATURE_SD_BY_LEAD: readonly SdAtLead[] = [
  { hours: 0, sd: 2 },
  { hours: 6, sd: 2 },
  { hours: 24, sd: 2.2 },
  { hours: 48, sd: 2.5 },
  { hours: 72, sd: 3 },
  { hours: 120, sd: 4 },
]; // K

/** Standard deviation of a forecast's station pressure by lead time. Judgement. */
export const PRESSURE_SD_BY_LEAD: readonly SdAtLead[] = [
  { hours: 0, sd: 100 },
  { hours: 6, sd: 100 },
  { hours: 24, sd: 150 },
  { hours: 48, sd: 200 },
  { hours: 72, sd: 280 },
]; // Pa

export type SdAtLead = { readonly hours: number; readonly sd: number };

/** An ensemble is too narrow near the ground: its spread is widened by this, sd = √(spread² + floor²). Judgement. */
export const ENSEMBLE_FLOOR_SD = 1.5; // K

/** Weather moves the pressure this far from the standard atmosphere's at a height. Judgement. */
export const STANDARD_PRESSURE_SD = 1000; // Pa

/** Hours after which a temperature error is remembered by 1/e. Judgement, 3 to 6 in the literature's schemes. */
export const TEMPERATURE_MEMORY_HOURS = 4;
/** The same for pressure, whose error is mostly height and sensor. Judgement. */
export const PRESSURE_MEMORY_HOURS = 24;
/** The memory is halved within this time of a sunset or sunrise, when the ground's regime changes. Judgement. */
export const SUN_CHANGE_HOURS = 2;

/** What a thermometer at the track may be off. Judgement. */
export const READING_TEMPERATURE_SD = 0.5; // K
/** What a barometer at the track may be off. Judgement. */
export const READING_PRESSURE_SD = 50; // Pa
/** What a dew-point depression read at the track may be off (a hygrometer of ±4 %). Judgement. */
export const READING_DEPRESSION_SD = 1; // K
/** Standard deviation of a forecast's dew-point depression. Judgement. */
export const DEPRESSION_SD = 2; // K
/** A reading further off than this is asked about before it is used: sun on the sensor, the tow vehicle. Judgement. */
export const FAR_OFF_READING = 10; // K

/** The same for station pressure; a sea-level number at 400 m is this far off. Judgement. */
export const FAR_OFF_PRESSURE = 4000; // Pa

/** A reading this far from the hours is asked about where the kind of the pressure explains it. Judgement. */
export const READING_KINDS_DIFFER = 800; // Pa
/** ... which it does where the reduction to sea level comes this near to the difference. Judgement. */
export const SAME_AS_REDUCTION = 400; // Pa

/** A baseline without elevation that far from tonight's pressure was proven higher or lower. Judgement. */
export const ANOTHER_PLACE_PRESSURE = 2000; // Pa

/** A run is too rich where it passes the rich limit in more than this share of cases. */
export const TOO_RICH_SHARE = 0.5;

/**
 * A setting that loses more of the power than this on average is no plan: a two-stroke a third richer than its best
 * mixture loads up, misfires and fouls its plugs. Judgement; the loss is k drift², so 20 % is 32 % rich at k = 2.
 */
export const MOST_LOSS_THAT_RUNS = 0.2;

/** A turn of the trim knob must save this much power over the runs it serves, or it is left alone. Judgement. */
export const TURN_WORTH = 0.0005;
/** An accepted plan is kept unless a fresh one is better by this share of what the accepted one costs. Judgement. */
export const CLEARLY_BETTER_SHARE = 0.1;
/** ... and by at least this much power in total, so that noise in two tiny numbers decides nothing. Judgement. */
export const CLEARLY_BETTER_LEAST = 0.0005;
/**
 * Two runs of the same forecast, each within ±0.3 K of what it would say without noise, differ by up to this. Judgement.
 */
export const FORECAST_NOISE = 0.6; // K

/** Step of the paths through the night. */
export const STEP_MINUTES = 15;
/** Hours further apart than this are named as a gap. Judgement. */
export const LONGEST_QUIET_GAP_HOURS = 3;
/** Not knowing the response moves the ideal area by more than this (as a log): the baseline is far away. Judgement. */
export const FAR_FROM_BASELINE_LOG = 0.02;
/** The night's mean need turns where it comes back by this much (as a log); smaller wiggles are noise. Judgement. */
export const TURNING_LOG = 0.004;

/** Plans with more swaps than this are not listed beside the chosen one; nobody makes them. Judgement. */
export const MOST_SWAPS_LISTED = 12;

/**
 * More settings times instants times draws than this in one go are refused: about a second of work. A hundred racers
 * with ninety jet sets each and sixty instants of runs come to three quarters of it.
 */
export const MOST_WORK = 6.4e7;

/** More runs than this in one night are refused. */
export const MOST_RUNS = 60;
