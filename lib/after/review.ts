import type { Setting } from '@/lib/carb/machine';
import type { Verdict } from '@/lib/carb/verdicts';
import type { LeanCount, PlanRequest, RunGrade } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { Kelvin, KelvinDifference, Ratio } from '@/lib/units/quantity';

/** What a run was planned on, and the temperature it was planned for; null where that was not kept. */
export type PlannedRun = { readonly setting: Setting; readonly temperature: Kelvin | null };

/** What the run log says of a run. */
export type LoggedRun = {
  readonly at: Instant;
  readonly run: string;
  readonly verdict: Verdict | null;
  /** How many sizes lean or rich. */
  readonly sizes: number | null;
};

export type NightToReview = {
  /** The night as it is known afterwards: every reading in it, and the machine with every verdict. */
  readonly request: PlanRequest;
  /** By the request's runs as given; null where no plan was accepted for a run. */
  readonly planned: readonly (PlannedRun | null)[];
  /** Of this machine at this event. */
  readonly log: readonly LoggedRun[];
};

/** The forecast against what was read; differences are forecast minus reading, so + is a forecast too warm. */
export type ForecastReview =
  | { readonly code: 'no-readings' }
  /** Readings there are, but none that the hours reach and that was believed. */
  | { readonly code: 'none-counts'; readonly readings: number }
  | {
      readonly code: 'read';
      readonly count: number;
      readonly bias: KelvinDifference;
      readonly least: KelvinDifference;
      readonly most: KelvinDifference;
      /** Around the bias; null where too few readings say nothing of it. */
      readonly spread: KelvinDifference | null;
      readonly from: Instant;
      readonly to: Instant;
      /** No more than the thermometer itself may be off. */
      readonly withinThermometer: boolean;
      /** What was read against: a person's hours are no forecast. */
      readonly hours: 'forecast' | 'typed' | 'both';
      /** When the forecast that is kept was made, where that was after the first run began. */
      readonly madeDuring: Instant | null;
    };

/** How a run stood by all that is known now. */
export type Stood = {
  readonly grade: RunGrade;
  readonly leanCount: LeanCount;
  /** Drift at its leanest and its richest moment. */
  readonly leanest: Ratio;
  readonly richest: Ratio;
};

export type RunReview = {
  readonly name: string;
  readonly start: Instant;
  readonly end: Instant;
  readonly planned: PlannedRun | null;
  /** `told`: somebody said so; else the setting is what was last said to be in, a guess. null: the machine was out. */
  readonly made: { readonly setting: Setting; readonly told: boolean } | null;
  /** In the middle of the run, by the hours and every reading; null where the hours do not reach. */
  readonly air: { readonly temperature: Kelvin; readonly sd: KelvinDifference } | null;
  /** On what was in, or the guess; null where no hours reach the run or the machine was out. */
  readonly stood: Stood | null;
  /** null: not in the log. */
  readonly log: LoggedRun | null;
};

/** One way to have jetted the night, judged by all that is known now. Runs count the review's. */
export type Tally = {
  /** Changes of main jets between the runs; what was fitted before the first is not one. */
  readonly swaps: number;
  /** Over the accepted risk of running lean. */
  readonly lean: readonly number[];
  /** Rich, or too rich to run. */
  readonly rich: readonly number[];
  /** Mean power lost against the ideal mixture. */
  readonly loss: Ratio;
  readonly stints: readonly { readonly setting: Setting; readonly firstRun: number }[];
};

export type Comparison = {
  /** null: nobody said what was in. */
  readonly made: Tally | null;
  /** null: no plan was accepted, or not for every run. */
  readonly planned: Tally | null;
  readonly perfect: Tally;
  /** Runs counted on a guess in `made`. */
  readonly untold: number;
};

export type NightReview = {
  readonly forecast: ForecastReview;
  readonly runs: readonly RunReview[];
  /** null where nothing was read and nothing judged: then nobody knows more than the forecast did. */
  readonly compared: Comparison | null;
  /** What the judgement rests on. */
  readonly known: { readonly readings: number; readonly verdicts: number };
};
