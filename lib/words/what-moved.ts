import type { ReadingJson } from '@/lib/contract/event';
import { readingFromJson } from '@/lib/contract/event-from-json';
import { hourAt } from '@/lib/hours/at';
import type { PlansFor } from '@/lib/night/accepting';
import type { Night } from '@/lib/night/night';
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
export async function whatMoves(
  { night, plan, now, voice }: PlannedNight,
  readings: EventRecord['readings'],
  planOf: PlansFor['plan'],
): Promise<readonly string[]> {
  const next = await planOf({ ...night.request, readings: readings.map(readingFromJson), now });
  if (!next.ok) return [];
  const sentences = changeSentences(comparePlans(plan, next.value), next.value, voice);
  if (sentences.length === 0) return ['No job moves: the plan stays as it is.'];
  return sentences.some((sentence) => /(colder|warmer)\.$/.test(sentence))
    ? sentences
    : [...sentences, rangeSentence(plan, next.value, voice)];
}

/** Where the temperature hardly moved, what changed is how well it is known. */
function rangeSentence(before: Plan, after: Plan, { units }: Voice): string {
  const next = after.runs.find(({ state }) => state === 'planned');
  const start = next === undefined ? undefined : after.sortedRuns[next.run]?.start;
  const sdAt = ({ hours }: Plan) =>
    hours.findLast(({ at }) => start !== undefined && at <= start)?.temperatureSd;
  const [was, is] = [sdAt(before), sdAt(after)];
  if (was === undefined || is === undefined) return '';
  const text = (sd: number) => formatTemperatureStep(kelvinDifference(sd), units, 1);
  return `The temperature of the next run is known to ±${text(is)}, not ±${text(was)}, so the plan needs another margin.`;
}

/** "the reading at 19:40", to tell the buttons of one from those of another. */
export const readingName = ({ at }: Reading, { plan, voice }: PlannedNight): string =>
  `the reading at ${clockText(at, planClock(plan, voice.zone))}`;

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
  });
  return warnings[0] ?? null;
}
