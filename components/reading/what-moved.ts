import { type Night, planNight } from '@/components/night/night';
import type { ReadingJson } from '@/lib/contract/event';
import { readingFromJson } from '@/lib/contract/event-from-json';
import { hourAt } from '@/lib/hours/at';
import { comparePlans } from '@/lib/plan/difference';
import { correctHours } from '@/lib/plan/readings';
import type { Plan, PlanWarning, Reading } from '@/lib/plan/types';
import type { EventRecord } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { formatTemperature, formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference } from '@/lib/units/quantity';
import { changeSentences } from '@/lib/words/changes';
import { planClock } from '@/lib/words/runs';
import { clockText } from '@/lib/words/times';
import type { Voice } from '@/lib/words/voice';

export type PlannedNight = {
  readonly night: Night;
  readonly plan: Plan;
  readonly now: Instant;
  readonly voice: Voice;
};

/** What other readings would change in the plan that is on the screen, act by act. */
export function whatMoves(
  { night, plan, now, voice }: PlannedNight,
  readings: EventRecord['readings'],
): readonly string[] {
  const request = { ...night.request, readings: readings.map(readingFromJson) };
  const next = planNight({ ...night, request }, now);
  if (!next.ok) return [];
  const sentences = changeSentences(comparePlans(plan, next.value), next.value, voice);
  return sentences.length === 0 ? ['No act moves: the plan stays as it is.'] : sentences;
}

/** "5.4 °F at 19:40, 7.2 °F colder than the hours say". */
export function readingText(reading: Reading, { night, plan, voice }: PlannedNight): string {
  const clock = clockText(reading.at, planClock(plan, voice.zone));
  const read = `${formatTemperature(reading.temperature, voice.units)} at ${clock}`;
  const hour = hourAt(night.series, reading.at);
  if (hour === null) return read;
  const off = kelvinDifference(reading.temperature - hour.temperature);
  const step = formatTemperatureStep(kelvinDifference(Math.abs(off)), voice.units);
  if (step === formatTemperatureStep(kelvinDifference(0), voice.units)) return `${read}, as the hours say`;
  return `${read}, ${step} ${off < 0 ? 'colder' : 'warmer'} than the hours say`;
}

/** What is odd about a reading by itself, as the planner judges it; null where nothing is. */
export function questionAbout(reading: ReadingJson, { night, now }: PlannedNight): PlanWarning | null {
  const { warnings } = correctHours({
    series: night.series,
    readings: [readingFromJson(reading, 0)],
    now,
    sun: night.request.sun ?? [],
  });
  return warnings[0] ?? null;
}
