import type { Machine, Setting } from '@/lib/carb/machine';
import type { Lapse } from '@/lib/hours/elevation-shift';
import type { HourSeries } from '@/lib/hours/series';
import { makePlan } from '@/lib/plan/make-plan';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import type { Plan, PlanHour, PlanProblem, Run } from '@/lib/plan/types';
import { mixtureFactor } from '@/lib/power/relative-power';
import { ok, type Result } from '@/lib/result/result';
import { type Instant, instant } from '@/lib/time/instant';
import { type Ratio, ratio } from '@/lib/units/quantity';
import { legsOf, movingMs, type Ride } from './ride';
import { type RideAirProblem, rideSeries } from './ride-series';

export type RideRequest = {
  readonly machine: Machine;
  readonly ride: Ride;
  /** Forecast or typed hours of one place; `elevation` says at which height. */
  readonly hours: HourSeries;
  readonly fall: Lapse;
  readonly now: Instant;
};

/** A moment of the ride with its air and how the one setting sits in it. */
export type RideMoment = PlanHour;

export type RidePlan = {
  readonly plan: Plan;
  readonly setting: Setting;
  /** The moment that asks for the largest main, and the one that asks for the smallest. */
  readonly thickest: RideMoment;
  readonly thinnest: RideMoment;
  /** What the one setting costs in the thinnest air: drift of the leanest carburettor and power lost to the mixture. */
  readonly cost: { readonly drift: Ratio; readonly powerLost: Ratio };
  /** Mean power lost to the mixture over the time on the move. */
  readonly meanLoss: Ratio;
};

export type RidePlanProblem = PlanProblem | RideAirProblem;

/** Each leg as a run; its share of the time on the move is its weight, so that a swap is worth what it saves overall. */
export function runsOfRide(ride: Ride): readonly Run[] {
  const whole = movingMs(ride);
  return legsOf(ride).map(({ from, to }, i) => ({
    name: String(i + 1),
    start: from.leave,
    end: to.arrive,
    weight: (to.arrive - from.leave) / whole,
    typicalSeconds: null,
  }));
}

/** Part of a ride planned for one setting. */
export function planLegs(
  request: RideRequest,
  part: {
    readonly series: HourSeries;
    readonly runs: readonly Run[];
    readonly fitted: Setting | null;
    /** null: what the machine says. */
    readonly worthIt: Ratio | null;
  },
): Result<Plan, PlanProblem> {
  const { machine, now } = request;
  const { series, runs, fitted, worthIt } = part;
  return makePlan({
    machine,
    runs,
    series,
    readings: [],
    // A ride of yesterday is planned as if it were still to come.
    now: instant(Math.min(now, runs[0]!.start)),
    fitted,
    made: [],
    accepted: null,
    options: { ...DEFAULT_OPTIONS, worthIt, swapMinutes: 0, oneSetting: true },
  });
}

/** The one setting for the whole ride, safe for its thickest air, and what it costs in its thinnest. */
export function planRide(request: RideRequest): Result<RidePlan, RidePlanProblem> {
  const { machine, ride, hours, fall } = request;
  const series = rideSeries(ride, hours, fall);
  if (!series.ok) return series;
  const runs = runsOfRide(ride);
  const asked = planLegs(request, {
    series: series.value,
    runs,
    fitted: null,
    worthIt: null,
  });
  if (!asked.ok) return asked;
  const plan = asked.value;
  const ridden = plan.hours.filter(({ at }) => runs.some(({ start, end }) => at >= start && at <= end));
  const need = ({ ideal }: PlanHour) => ideal[0]!;
  const thickest = ridden.reduce((best, hour) => (need(hour) > need(best) ? hour : best));
  const thinnest = ridden.reduce((best, hour) => (need(hour) < need(best) ? hour : best));
  return ok({
    plan,
    setting: plan.runs[0]!.setting,
    thickest,
    thinnest,
    cost: {
      drift: thinnest.drift,
      powerLost: ratio(1 - mixtureFactor(thinnest.drift, machine.richPowerLoss)),
    },
    meanLoss: ratio(plan.runs.reduce((sum, { loss }, i) => sum + loss * runs[i]!.weight, 0)),
  });
}
