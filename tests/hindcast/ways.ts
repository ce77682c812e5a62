import { airAt } from '@/lib/air/air-from';
import { logDelivered } from '@/lib/carb/drift';
import type { Setting } from '@/lib/carb/machine';
import { logIdealArea } from '@/lib/carb/response';
import { candidatesFor } from '@/lib/plan/candidates';
import { makePlan } from '@/lib/plan/make-plan';
import { correctHours } from '@/lib/plan/readings';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import type { PlanRequest, Reading } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { addMinutes } from '@/lib/time/instant';
import { kelvin, pascal, ratio } from '@/lib/units/quantity';
import type { DrawnNight } from './draw-night';
import { perfectSettings } from './perfect';

/** What a way had in the engine in a run; `said`: the chance of lean it knew of then, where it knew any. */
export type Ridden = {
  readonly setting: Setting;
  readonly said: number | null;
  /** Temperature that was counted on [K]. */
  readonly temperature: number | null;
};

/** A way of jetting through a night; by run. */
export type Way = (night: DrawnNight) => readonly Ridden[];

/** A decision falls so long before a run: to swap takes 15 minutes, to read and type 10. */
const DECIDED_BEFORE = 25;

const plainly = (settings: readonly Setting[]): readonly Ridden[] =>
  settings.map((setting) => ({ setting, said: null, temperature: null }));

/** Settings of the box, leanest first, and the baseline's place among them. */
export function boxOf({ machine }: DrawnNight) {
  const baseline: Setting = { mains: machine.carburettors.map(({ main }) => main), trim: null };
  const box = candidatesFor(machine, baseline)
    .toSorted((a, b) => a.leanest - b.leanest)
    .map(({ setting, leanest }) => ({ setting, leanest }));
  const wanted = logDelivered(machine, baseline)[0]! - 1e-9;
  return { box, baseline: box.findIndex(({ leanest }) => leanest >= wanted) };
}

const keep: Way = (night) => {
  const { box, baseline } = boxOf(night);
  return plainly(night.runs.map(() => box[baseline]!.setting));
};

const oneRicher: Way = (night) => {
  const { box, baseline } = boxOf(night);
  return plainly(night.runs.map(() => box[Math.min(baseline + 1, box.length - 1)]!.setting));
};

/** Lean by 3 % shows on the plug; the next size goes in for the next run, and stays. */
const REACTS_AT = Math.log(1 - 0.03);

const react: Way = (night) => {
  const { box, baseline } = boxOf(night);
  let at = baseline;
  return plainly(
    night.runs.map((_, run) => {
      const { setting, leanest } = box[at]!;
      if (leanest - Math.max(...night.ideals[run]!) < REACTS_AT) at = Math.min(at + 1, box.length - 1);
      return setting;
    }),
  );
};

/** What this app's law asks for at a temperature that was read, in the forecast's pressure and humidity. */
function idealRead({ machine, request }: DrawnNight, { at, temperature }: Reading): number {
  const { series, now } = request;
  const hours = correctHours({ series, readings: [], now }).trackAt(Float64Array.of(at));
  return logIdealArea(
    machine,
    airAt({
      temperature: kelvin(temperature),
      pressure: pascal(hours.pressure[0]!),
      relativeHumidity: ratio(hours.relativeHumidity[0]!),
      pressureFrom: 'station',
    }),
  );
}

/** Left alone until the reading asks for a setting further off than this share of a size. */
const HYSTERESIS = 0.75;

/** A thermometer before each run and the law; `richer`: the first size that is not leaner than the law, else the nearest. */
const thermometer =
  (richer: boolean): Way =>
  (night) => {
    const { box, baseline } = boxOf(night);
    let at = baseline;
    return plainly(
      night.runs.map((_, run) => {
        const ideal = idealRead(night, night.readingBefore(run, DECIDED_BEFORE));
        const step = box[Math.min(at + 1, box.length - 1)]!.leanest - box[at]!.leanest || 0.024;
        const off = (box[at]!.leanest - ideal) / step;
        const holds = richer ? off >= 0 && off <= 1 + HYSTERESIS : Math.abs(off) <= HYSTERESIS;
        if (!holds) at = richer ? firstAbove(box, ideal) : nearest(box, ideal);
        return box[at]!.setting;
      }),
    );
  };

type Box = ReturnType<typeof boxOf>['box'];

function firstAbove(box: Box, ideal: number): number {
  const at = box.findIndex(({ leanest }) => leanest >= ideal);
  return at === -1 ? box.length - 1 : at;
}

function nearest(box: Box, ideal: number): number {
  const away = box.map(({ leanest }) => Math.abs(leanest - ideal));
  return away.indexOf(Math.min(...away));
}

/** The plan: accepted before the first run, made again before each one, and followed. */
const planned =
  (reads: boolean): Way =>
  (night) => {
    const { runs } = night;
    let request: PlanRequest = night.request;
    const first = expectOk(makePlan(request));
    request = { ...request, accepted: settingsAsGiven(first) };
    return runs.map(({ start }, run) => {
      const readings = reads
        ? [...request.readings, night.readingBefore(run, DECIDED_BEFORE)]
        : request.readings;
      request = { ...request, readings, now: addMinutes(start, -DECIDED_BEFORE) };
      const plan = expectOk(makePlan(request));
      const { setting, chanceOfLean, air } = plan.runs[run]!;
      const made = [...request.made, { run, setting }];
      request = { ...request, accepted: settingsAsGiven(plan), fitted: setting, made };
      return { setting, said: chanceOfLean, temperature: air.temperature };
    });
  };

/** The dearest worth there is: no swap is made for power, and what is left are those that keep the limit. */
const forSafetyAlone =
  (way: Way): Way =>
  (night) =>
    way({
      ...night,
      request: { ...night.request, options: { ...night.request.options, worthIt: ratio(1) } },
    });

export const WAYS = {
  'keep the baseline': keep,
  'react at 3 % lean': react,
  'one size richer all night': oneRicher,
  'thermometer, nearest': thermometer(false),
  'thermometer, next richer': thermometer(true),
  'the plan': planned(false),
  'the plan, a reading before each run': planned(true),
  'the same, swaps for safety alone': forSafetyAlone(planned(true)),
  'perfect knowledge': (night) => plainly(perfectSettings(night)),
} as const satisfies Readonly<Record<string, Way>>;

export type WayName = keyof typeof WAYS;
