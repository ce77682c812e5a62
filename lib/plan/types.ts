import type { Air } from '@/lib/air/air';
import type { PressureDoubt } from '@/lib/air/pressure-doubt';
import type { Machine, Setting } from '@/lib/carb/machine';
import type { MarkingDoubt } from '@/lib/carb/marking-doubt';
import type { Provenance } from '@/lib/hours/provenance';
import type { HourSeries } from '@/lib/hours/series';
import type { Instant } from '@/lib/time/instant';
import type { Kelvin, Pascal, Ratio, Watt } from '@/lib/units/quantity';
import type { PlaceOffset } from './place-offset';

/** One timed stretch the engine works: a heat, a round, a leg of a ride. */
export type Run = {
  readonly name: string;
  readonly start: Instant;
  readonly end: Instant;
  /** How much the run's power counts beside the others; 1 by default. */
  readonly weight: number;
  /** Length of a timed run, for the price of a swap in seconds; null where it is not timed over a distance. */
  readonly typicalSeconds: number | null;
};

/** A temperature (and perhaps more) read at the track. */
export type Reading = {
  readonly id: string;
  readonly at: Instant;
  readonly temperature: Kelvin;
  readonly stationPressure: Pascal | null;
  readonly relativeHumidity: Ratio | null;
  /** True where the person has confirmed a reading that stands far from the hours; otherwise such a one is left out. */
  readonly confirmed?: boolean;
  /** Name of the station it was observed at; absent: read at the track. */
  readonly from?: string;
  /** How far it may be off for the track [K, Pa]; absent: as an instrument at the track. */
  readonly sd?: { readonly temperature: number; readonly pressure: number };
};

/** A run that has been made, and with what. The plan never touches it. `run` counts the request's runs as given. */
export type MadeRun = { readonly run: number; readonly setting: Setting };

/** Somebody said that a setting is in the engine, and from when on. */
export type Fitting = { readonly at: Instant; readonly setting: Setting };

export type PlanOptions = {
  /** Paths that are planned over, 64 by default. */
  readonly scenarios: number;
  readonly seed: number;
  /**
   * What a swap must save, added up over the runs it serves, to be worth making; 0.005 = half a percent of power. null:
   * what the machine's own is, or the usual one (`swapWorth` in lib/carb); twice that where a thermometer is read.
   */
  readonly worthIt: Ratio | null;
  /** Time a jet swap takes. A swap fits only where the gap before the run is at least this long. */
  readonly swapMinutes: number;
  /** One setting for all runs: a ride has no gap to swap in. */
  readonly oneSetting: boolean;
};

export type PlanRequest = {
  readonly machine: Machine;
  readonly runs: readonly Run[];
  readonly series: HourSeries;
  readonly readings: readonly Reading[];
  readonly now: Instant;
  /** What past nights taught about the place; absent: nothing, or it is not to be used. */
  readonly placeOffset?: PlaceOffset;
  /** What the person said is in the engine; null where nobody said so. */
  readonly fitted: Setting | null;
  /** All that was said of it tonight, oldest first; absent: `fitted` is said as of `now`. */
  readonly fittings?: readonly Fitting[];
  readonly made: readonly MadeRun[];
  /** From then on the machine runs no more: knocked out, or home early. */
  readonly outFrom?: Instant;
  /**
   * The plan the person accepted, kept unless a new one is clearly better. One setting for each of the request's
   * runs, in the request's order (`settingsAsGiven(plan)` makes it).
   */
  readonly accepted: readonly Setting[] | null;
  readonly options: PlanOptions;
};

export type DriftState = 'lean' | 'right' | 'rich';

/**
 * How a setting does in a run. `lean`: its chance of running lean is over the limit. `drowned`: so rich that it does not
 * run. `rich`: too rich more often than not, which costs power and harms nothing. `good`: none of these.
 */
export type RunGrade = 'good' | 'rich' | 'lean' | 'drowned';

/** "2 in 64": how often a setting is lean, as it is told. */
export type LeanCount = { readonly lean: number; readonly of: number };

/** One hour of the picture: the air, the ideal and how the baseline and the plan sit in it. */
export type PlanHour = {
  readonly at: Instant;
  readonly origin: HourSeries['hours'][number]['origin'];
  /** Who told its temperature and its pressure, and when. */
  readonly from: Provenance;
  /** The ambient air after readings have corrected the hours (posterior mean). */
  readonly air: Air;
  /** The same as it was forecast or typed, before any reading. */
  readonly given: Pick<Air, 'temperature' | 'pressure' | 'relativeHumidity'>;
  readonly temperatureSd: number;
  /** Ideal size for each carburettor in its own marking, not rounded. */
  readonly ideal: readonly number[];
  /** 10 % and 90 % of each carburettor's ideal, for the fan. */
  readonly idealLow: readonly number[];
  readonly idealHigh: readonly number[];
  /** Drift of the baseline setting: leanest carburettor. */
  readonly baselineDrift: Ratio;
  readonly baselineState: DriftState;
  /** Drift of the setting the plan has in the engine at this hour. */
  readonly drift: Ratio;
  /** Chance that the planned setting is lean at this instant, from the spread of the air and of the response. */
  readonly chanceOfLean: Ratio;
  readonly leanCount: LeanCount;
  /** Power of the planned setting relative to the baseline in its own air. */
  readonly relativePower: Ratio;
};

/** When the baseline setting passes into another state, as a time with an 80 % range. */
export type Crossing = {
  readonly at: Instant;
  readonly earliest: Instant;
  /** null: in at least one case in ten it does not happen before the hours end. */
  readonly latest: Instant | null;
  readonly to: DriftState;
};

export type RunPlan = {
  readonly run: number;
  readonly setting: Setting;
  /** Ambient air in the middle of the run (posterior mean). */
  readonly air: Air;
  /** Its temperature as the hours gave it, before any reading. */
  readonly givenTemperature: Kelvin;
  /** Ideal size for each carburettor at the run's leanest instant. */
  readonly ideal: readonly number[];
  /** Least and greatest mean drift over the run's window, over all carburettors. */
  readonly leanest: Ratio;
  readonly richest: Ratio;
  readonly chanceOfLean: Ratio;
  /** The same as a count, for people: more than the limit's share exactly where the chance is. */
  readonly leanCount: LeanCount;
  readonly grade: RunGrade;
  /** How the run would be on what is in the engine now, were nothing changed. */
  readonly ifKept: { readonly grade: RunGrade; readonly leanCount: LeanCount };
  readonly chanceOfRich: Ratio;
  /** How far the run stands from its lean limit: leanest drift + lean limit. */
  readonly reserve: Ratio;
  /** Mean power lost against the ideal mixture. */
  readonly loss: Ratio;
  readonly relativePower: Ratio;
  /**
   * `made`: somebody said what it was made on. `past`: it has begun and nobody said; the setting is what was last said
   * to be in, a guess. `out`: the machine does not make it. `beyond-hours`: nothing is known, the numbers above are those of the nearest hour, not to be
   * shown.
   */
  readonly state: 'made' | 'past' | 'planned' | 'out' | 'beyond-hours';
};

export type Stint = { readonly setting: Setting; readonly firstRun: number; readonly lastRun: number };

/**
 * Why a swap is made. `run` is the first run, from the swap on, that the old setting would leave its limit in, with its
 * count; `old-drowned`: it is so rich there that it does not run.
 */
export type SwapReason =
  | { readonly code: 'old-turns-lean'; readonly run: number; readonly count: LeanCount }
  | { readonly code: 'old-drowned' | 'old-turns-rich'; readonly run: number }
  | { readonly code: 'power'; readonly gain: Ratio }
  /** It gains nothing that counts: it stands in the accepted plan, and undoing it would gain nothing either. */
  | { readonly code: 'as-accepted' };

/** One change of setting between two runs. */
export type Swap = {
  /** The first run on the new setting. */
  readonly beforeRun: number;
  readonly from: Setting;
  readonly to: Setting;
  /** 'jets' needs the gap; 'trim' is a turn of the knob and fits any gap. */
  readonly kind: 'jets' | 'trim';
  /** From the end of the run before (or now) ... */
  readonly windowStart: Instant;
  /** ... to the latest moment to begin and still be ready. */
  readonly latestStart: Instant;
  /** The start of the run it is for. */
  readonly readyBy: Instant;
  readonly reason: SwapReason;
  /** What happens over the stint if the swap is skipped. */
  readonly ifSkipped: { readonly chanceOfLean: Ratio; readonly count: LeanCount; readonly loss: Ratio };
};

/** Things the person must know beside the plan. Sentences live in lib/words. */
export type PlanWarning =
  /** `sizes`: the smallest jets that exist and would do, by carburettor; null where the person's own list has none. */
  | { readonly code: 'no-jet-rich-enough'; readonly run: number; readonly sizes: readonly number[] | null }
  | { readonly code: 'no-jet-lean-enough'; readonly run: number; readonly sizes: readonly number[] | null }
  | {
      readonly code: 'swap-does-not-fit';
      readonly run: number;
      readonly gapMinutes: number;
      readonly swapMinutes: number;
    }
  | { readonly code: 'run-beyond-hours'; readonly run: number; readonly hoursEnd: Instant }
  | { readonly code: 'run-before-hours'; readonly run: number; readonly hoursStart: Instant }
  | { readonly code: 'gap-in-hours'; readonly from: Instant; readonly to: Instant }
  | { readonly code: 'pressure-is-estimate' }
  /** Farther ahead than any forecast reaches: the hours are a guess at the season, as unsure as the season is. */
  | { readonly code: 'season-not-forecast'; readonly run: number; readonly daysAhead: number }
  /** A raw model under a clear calm sky over snow: planned up to so much colder [K], and wider. */
  | { readonly code: 'model-misses-clear-cold'; readonly run: number; readonly colder: number }
  | { readonly code: 'reading-far-off'; readonly readingId: string; readonly difference: number }
  | { readonly code: 'reading-pressure-far-off'; readonly readingId: string; readonly difference: number }
  | { readonly code: 'reading-outside-hours'; readonly readingId: string }
  /** A pressure that may be of another kind than it was called: to be asked about. */
  | { readonly code: 'baseline-pressure-in-doubt'; readonly doubt: PressureDoubt }
  | { readonly code: 'hours-pressure-in-doubt'; readonly at: Instant; readonly doubt: PressureDoubt }
  | {
      readonly code: 'reading-pressure-in-doubt';
      readonly readingId: string;
      /** Reading minus hours [Pa]. */
      readonly difference: number;
      readonly doubt: PressureDoubt;
    }
  /** A station pressure of nowhere, far from tonight's [Pa]: another height, or another kind. */
  | {
      readonly code: 'baseline-pressure-without-elevation';
      readonly pressure: Pascal;
      readonly tonight: Pascal;
    }
  | { readonly code: 'runs-overlap'; readonly run: number; readonly other: number }
  | { readonly code: 'runs-reordered' }
  | { readonly code: 'baseline-jet-not-in-box'; readonly size: number }
  | { readonly code: 'marking-in-doubt'; readonly doubt: MarkingDoubt }
  | { readonly code: 'far-from-baseline-air'; readonly run: number };

/** Why there is no plan at all. */
export type PlanProblem =
  | { readonly code: 'no-runs' | 'no-hours' | 'empty-box' }
  | { readonly code: 'too-few-jets'; readonly carburettors: number }
  /** What is fitted or was made names another number of jets than the machine has carburettors. */
  | { readonly code: 'setting-does-not-fit'; readonly mains: number; readonly carburettors: number }
  | { readonly code: 'hours-do-not-cover-any-run'; readonly hoursStart: Instant; readonly hoursEnd: Instant }
  | { readonly code: 'run-ends-before-it-starts'; readonly run: number }
  | { readonly code: 'too-many-runs'; readonly limit: number }
  /** `settings` of the machine with most of them, `runHours` all its runs together. */
  | {
      readonly code: 'too-much-at-once';
      readonly machines: number;
      readonly settings: number;
      readonly runHours: number;
    };

/** The best plan with a given number of jet swaps: what one swap less costs. */
export type BySwapCount = {
  readonly swaps: number;
  /** By sorted run. */
  readonly settings: readonly Setting[];
  readonly leanRunsOverRisk: number;
  readonly richRuns: number;
  /** Weighted mean power lost over the runs. */
  readonly loss: Ratio;
  /** Total seconds lost over the timed runs against the ideal mixture, through speed ~ power^(1/3); null if none is timed. */
  readonly secondsLost: number | null;
};

/** What a swap had to save in a plan, and what its shares of power are shares of; null where that is not known. */
export type Worth = { readonly swap: Ratio; readonly ratedPower: Watt | null };

export type Plan = {
  readonly hours: readonly PlanHour[];
  readonly crossings: readonly Crossing[];
  readonly runs: readonly RunPlan[];
  /** Order of the request's runs after sorting by start: runs[i] here is request.runs[order[i]]. All run indexes above count sorted runs. */
  readonly order: readonly number[];
  readonly sortedRuns: readonly Run[];
  readonly stints: readonly Stint[];
  readonly swaps: readonly Swap[];
  readonly bySwapCount: readonly BySwapCount[];
  /**
   * The best plan that differs in its first act and keeps the limits as well, with its margin (objective difference,
   * as loss); null where nothing else keeps them. Settings by sorted run, as everywhere in a plan.
   */
  readonly runnerUp: { readonly settings: readonly Setting[]; readonly margin: Ratio } | null;
  /** True where the accepted plan was kept although a fresh one would differ a little. */
  readonly kept: boolean;
  readonly warnings: readonly PlanWarning[];
  /** Where the hours end, the plan ends. */
  readonly hoursEnd: Instant;
  readonly baseline: Setting;
  /** `doubled`: a thermometer is read, so a swap has to save twice what the machine says. */
  readonly worth: Worth & { readonly doubled?: true };
  /** What is in the engine now, as far as anybody said. */
  readonly inNow: InNow;
};

/** What is in the engine, and how that is known: somebody said so, or only the baseline stands for it. */
export type InNow = { readonly setting: Setting; readonly known: 'told' | 'baseline' };
