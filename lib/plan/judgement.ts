/**
 * Every number of the planner that is not a law, in one place: how wrong forecasts were measured to be, with the data it
 * was measured on, and what is only judgement and says so.
 *
 * Data: (1) official US forecasts of the night's low and the day's high, 12 to 48 h ahead, against what was reported at 45
 * airports of the cold states, winter 2021-22, about 6,600 nights a lead (github speegled/weather_forecasts); (2) the
 * same for daily highs up to 6 days ahead, 40 of those cities, five winters to 2017 (ASA Data Expo 2018); (3) raw model
 * MEPS 2.5 km against 709 Nordic stations, four runs of one February day (github harphub/harpData, MET Norway); (4)
 * ensembles at Magdeburg, in the Pacific Northwest and at Innsbruck (data sets of ensAR, ensembleBMA, ensemblepp); (5) raw
 * model GFS against 210 US airports, winter 2019-20 (Geophys. Res. Lett. 48 (2021), 10.1029/2021GL095101). Airports, not
 * tracks in hollows: a reading at the track beats all of it.
 */

/** A number that changes with lead time, straight lines between. */
export type AtLead = { readonly hours: number; readonly value: number };

/** Variance of a forecast temperature's error a day ahead, above the cold [K²]. Data (1): sd 1.9 K. */
export const TEMPERATURE_VARIANCE = 3.8;
/** What each kelvin of forecast cold below COLD_FROM adds to it [K]. Data (1): sd 2.5 K at -15 °C, 2.9 K at -25 °C. */
export const COLD_VARIANCE = 0.235;
/** Where the forecast itself says that the night gets cold, errors grow. Data (1), 268.15 K is -5 °C. */
export const COLD_FROM = 268.15; // K

/** How the sd grows with lead time, against a day ahead. Data (1) to 48 h, data (2) beyond. Under 12 h: held, judgement. */
export const TEMPERATURE_GROWTH: readonly AtLead[] = [
  { hours: 12, value: 0.96 },
  { hours: 24, value: 1 },
  { hours: 36, value: 1.05 },
  { hours: 48, value: 1.1 },
  { hours: 72, value: 1.22 },
  { hours: 96, value: 1.37 },
  { hours: 120, value: 1.58 },
  { hours: 144, value: 1.8 },
];

/**
 * Beyond six days the error grows towards how far nights lie from their month's mean: 6.2 K, 4.3 to 7.9 by city, data
 * (2). When it gets there is judgement. A sd that is larger already stays.
 */
export const SEASON_SD: readonly AtLead[] = [
  { hours: 240, value: 6 },
  { hours: 336, value: 6.2 },
]; // K

/** Hours ahead from which an hour says no more than the season does. Judgement: where SEASON_SD begins. */
export const SEASON_LEAD_HOURS = 240;

/**
 * Share of the variance that stays all night: a place's and a day's own offset. Fitted to the correlations of data (1) and
 * (3): 0.22 + 0.78 exp(-t/6 h) is 0.69, 0.51, 0.39, 0.33, 0.23 at 3, 6, 9, 12, 24 h where MEPS has 0.74, 0.53, 0.38, 0.30,
 * 0.24. Nothing measured asks for a change at sunset or sunrise.
 */
export const LASTING_SHARE = 0.22;
/** Hours after which the rest of a temperature error is remembered by 1/e. The same fit. */
export const TEMPERATURE_MEMORY_HOURS = 6;

/** Above this much spread an ensemble still misses: sd = √(spread² + floor²). Data (4): 1.0 to 1.5 at Magdeburg. */
export const ENSEMBLE_FLOOR_SD = 1.3; // K
/** The same among mountains. Data (4): about 3 at Innsbruck, 2.8 to 3.2 in the Pacific Northwest. */
export const MOUNTAIN_FLOOR_SD = 3; // K
/** Ground this high begins to count as mountains, and surely is. Judgement: Innsbruck lies at 580 m, Magdeburg at 76. */
export const MOUNTAIN_ELEVATION = { from: 300, to: 600 } as const; // m
/** A site this far above or below the service's own terrain lies among mountains. Judgement. */
export const MOUNTAIN_STEP = { from: 100, to: 300 } as const; // m

/** In the cold a raw model's sd is this much wider than an official forecast's. Data (3): 3.5 K below -10 °C at night. */
export const RAW_MODEL_WIDENING = 1.2;
/**
 * A raw model runs this much too warm on a clear calm night over snow. Data (3): +0.6 K under a model sky of at most 2/8,
 * +1.4 K where little wind was observed too; data (5): +1 K under at most a quarter of cloud. Official forecasts: none,
 * data (1), -0.1 ± 0.1 K below -10 °C. Taken as the most there is, since half of such nights have none.
 */
export const RAW_MODEL_BIAS = 1; // K
/**
 * How far one clear calm night's bias lies from another's, all night: half of them have none, and the others tend far to
 * the cold side. Data (3): such nights have an sd of 3.2 K (median +0.4, mean +1.4, 95th percentile +7.8 K), where
 * what is said above makes 2.7 K at -10 °C; √(3.2² − 2.7²) is the bias's own.
 */
export const RAW_MODEL_BIAS_SD = 1.7; // K
/**
 * The same where nobody told of the sky, without a shift: more than half of such nights are warmer than the model says. Data
 * (3), nights below -10 °C: median -0.6 K, 95th percentile +7.6 K, which is that of a sd of 4.6 K; what is said above makes
 * 3.0 K at -15 °C, and √(4.6² − 3.0²) is the rest. From the 95th percentile, since 5 % is what is promised.
 */
export const UNKNOWN_SKY_SD = 3.5; // K
/** From COLD_FROM the widening and the bias come in, and are whole at this. Data (3) has steps at -5 and -10 °C. */
export const COLD_WHOLE = 263.15; // K
/** Cloud up to which a sky is clear, and from which it is not. 2/8 and 25 % in data (3) and (5); the end is judgement. */
export const CLEAR_SKY = { whole: 0.25, none: 0.5 } as const;
/** Wind at 10 m up to which air is calm, and from which it is not. 2 m/s in data (3); the end is judgement. */
export const CALM_WIND = { whole: 2, none: 4 } as const; // m/s
/** Snow that covers the ground: nothing at none, all of it at this depth. Judgement. */
export const SNOW_COVER_DEPTH = 0.05; // m

/** Standard deviation of a forecast's sea-level pressure. Data (3) to 48 h: 0.66, 0.71, 1.00 hPa; beyond, judgement. */
export const PRESSURE_SD_BY_LEAD: readonly AtLead[] = [
  { hours: 6, value: 70 },
  { hours: 24, value: 70 },
  { hours: 48, value: 100 },
  { hours: 72, value: 200 },
  { hours: 120, value: 400 },
  { hours: 240, value: 800 },
]; // Pa
/**
 * What bringing it to the station's height adds: six metres of height. Judgement on the safe side: with the sizes above
 * 1.0 hPa at 6 and 24 h and 1.2 at 48 h, where stations moved by height alone gave 0.9 for most and 2.0 over all, data (3).
 */
export const PRESSURE_HEIGHT_SD = 70; // Pa

/** Weather moves the pressure this far from the standard atmosphere's at a height. Judgement. */
export const STANDARD_PRESSURE_SD = 1000; // Pa
/** Hours after which a pressure error, mostly height and sensor, is remembered by 1/e. Judgement. */
export const PRESSURE_MEMORY_HOURS = 24;

/**
 * How far the mean errors of places lie apart: 0.4 K with official forecasts (0.38 between 45 airports, sampling taken
 * out, data (1)), 1.0 K with raw models, data (3). Of typed hours nobody knows who made them: as official ones.
 */
export const PLACE_SD = { official: 0.4, rawModel: 1 } as const; // K
/**
 * A place explains at most this share of the variance that stays all night. Data (3): 1.0² of 22 % of 2.9² to 3.5² K² is
 * two fifths to half; where the sizes above are smaller than the raw model's own, this is on the safe side.
 */
export const PLACE_MOST_OF_LASTING = 0.5;
/** Share of a place's offset that is the same at every hour; the rest goes with the hour after sunset. Judgement. */
export const PLACE_EVERY_HOUR_SHARE = 0.5;
/** Hours after sunset over which that rest is remembered by 1/e. Judgement: half an evening. */
export const PLACE_HOURS = 4;
/**
 * What a night's own constant keeps to the next night. Errors of two nights running correlate by 0.17, data (1):
 * 0.04 of it is the place (0.4² of 2.1² K²), 0.01 what wanders, and 0.65 of the night's 0.18 is the rest.
 */
export const NIGHT_TO_NIGHT = 0.65;
/** Readings further from a place than this teach nothing about it. Judgement: a hollow is smaller than a grid cell. */
export const SAME_PLACE_M = 300;
/** No more readings than this teach a place, the latest. Judgement: forty nights of five. */
export const MOST_TEACHING = 200;

/** What a thermometer at the track may be off. Judgement. */
export const READING_TEMPERATURE_SD = 0.5; // K
/** A reading pays where it narrows the next run's temperature by at least this, ... Judgement: what it may be off itself. */
export const READING_TELLS = 0.5; // K
/** ... and where a run within the memory of an error may be lean in at least this many cases. Judgement. */
export const READING_CHANCE = 0.01;
/** From the reading to the decision: time to type it and to look. Judgement. */
export const READING_MINUTES = 10;
/** A reading is asked for this long before it tells most. Judgement: a memory of six hours keeps nine tenths of it. */
export const READING_NOTICE_MINUTES = 30;
/** What a barometer at the track may be off. Judgement. */
export const READING_PRESSURE_SD = 50; // Pa
/** What a dew-point depression read at the track may be off (a hygrometer of ±4 %). Judgement. */
export const READING_DEPRESSION_SD = 1; // K
/** Standard deviation of a forecast's dew-point depression. Judgement on the safe side: data (3) has 1.6. */
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

/**
 * Where a thermometer is read a swap must save its worth so many times: a later reading may ask for it back, which is a
 * second swap. Of the swaps to a leaner jet half were (0.04 of 0.07 a night, `npm run hindcast`'s nights with a reading
 * before each run); twice is there and back.
 */
export const THERE_AND_BACK = 2;
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
