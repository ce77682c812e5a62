import type { BoardNight } from '@/lib/contract/board';
import type { BoardAnswer, BoardMachineAnswer } from '@/lib/contract/board-answer';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { settingJson } from '@/lib/contract/standing-to-json';
import { dataAge, hoursProvenance } from '@/lib/hours/provenance';
import type { HourSeries } from '@/lib/hours/series';
import { airBetween } from '@/lib/standing/air-between';
import type { Standing } from '@/lib/standing/standing';
import { type Instant, MINUTE_MS } from '@/lib/time/instant';
import { isoLocal } from '@/lib/time/zone';
import { METRIC_UNITS } from '@/lib/units/choice';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { plainNumber } from '@/lib/units/format';
import { dangerSentences } from '@/lib/words/danger';
import { jobWords } from '@/lib/words/job';
import { planProblemSentence } from '@/lib/words/plan-problems';
import { questionWords } from '@/lib/words/question';
import { riskSentence } from '@/lib/words/risk';
import { settingText } from '@/lib/words/settings';
import type { BoardMachine } from './plan-board';

/** What does not depend on who asks. */
export type BoardBody = Omit<BoardAnswer, 'id' | 'revision' | 'expiresAt' | 'pushKey' | 'keeper' | 'night'>;

type Given = {
  readonly night: BoardNight;
  /** Starts of the next runs were counted from these when it was posted: run starts by machine. */
  readonly firstStarts: Readonly<Record<string, readonly string[]>>;
  readonly machines: readonly BoardMachine[];
  readonly series: HourSeries;
  readonly postedAt: Instant;
  readonly now: Instant;
};

/** A planned board as JSON, with the words of the plates. */
export function boardBody({ night, firstStarts, machines, series, postedAt, now }: Given): BoardBody {
  const zone = night.event.timezone;
  const told = hoursProvenance(series);
  const write = (at: Instant) => isoLocal(at, zone);
  return {
    event: { name: night.event.name, timezone: zone },
    postedAt: write(postedAt),
    plannedAt: write(now),
    hours: {
      age: series.hours.length === 0 ? 'none' : dataAge(told, now),
      madeAt: told.madeAt === null ? null : write(told.madeAt),
      attribution: series.source.attribution,
    },
    air: airOf(machines, now),
    machines: machines.map((machine) =>
      machine.standing === null
        ? without(machine, night)
        : machineAnswer(machine, machine.standing, { zone, starts: firstStarts[machine.id] ?? [] }),
    ),
  };
}

function airOf(machines: readonly BoardMachine[], now: Instant): BoardAnswer['air'] {
  const hours = machines.find(({ standing }) => standing !== null)?.standing?.plan.hours ?? [];
  const air = airBetween(hours, now);
  if (air === null) return null;
  return {
    temperatureC: plainNumber(kelvinToCelsius(air.temperature), 1),
    pressureHpa: plainNumber(pascalToHectopascal(air.pressure), 1),
    relativeHumidity: plainNumber(air.relativeHumidity, 2),
  };
}

function without({ id, name, problem }: BoardMachine, { event }: BoardNight): BoardMachineAnswer {
  const voice = {
    zone: event.timezone,
    units: METRIC_UNITS,
    runNames: event.runs.map((run) => run.name),
  };
  return {
    id,
    name,
    problem: problem === null ? '' : planProblemSentence(problem, voice),
    inNow: '',
    known: false,
    state: null,
    driftPercent: null,
    lateByMinutes: 0,
    question: null,
    dangers: [],
    risk: '',
    job: null,
    runs: [],
  };
}

type Told = { readonly zone: string; readonly starts: readonly string[] };

function machineAnswer(
  { id, name }: Pick<BoardMachine, 'id' | 'name'>,
  standing: Standing,
  { zone, starts }: Told,
): BoardMachineAnswer {
  const { plan, inNow, mixture, dangers } = standing;
  return {
    id,
    name,
    problem: null,
    inNow: settingText(inNow.setting),
    known: inNow.known === 'told',
    state: mixture?.state ?? null,
    driftPercent: mixture === null ? null : plainNumber(mixture.drift * 100, 2),
    lateByMinutes: lateBy(standing, starts),
    question: questionAnswer(standing, zone),
    dangers: [...dangerSentences(dangers, plan)],
    risk: riskSentence(standing),
    job: jobAnswer(standing, zone),
    runs: plan.runs.map(({ run, state, setting, grade }) => ({
      name: plan.sortedRuns[run]!.name,
      start: isoLocal(plan.sortedRuns[run]!.start, zone),
      state,
      setting: settingText(setting),
      grade: state === 'planned' ? grade : null,
    })),
  };
}

/** By how much the next run stands behind the time it was posted with. */
function lateBy({ plan, now }: Standing, starts: readonly string[]): number {
  const next = plan.sortedRuns.findIndex(({ start }) => start > now);
  const [run, posted] = [plan.sortedRuns[next], starts[plan.order[next] ?? -1]];
  if (run === undefined || posted === undefined) return 0;
  return Math.round((run.start - instantFromJson(posted)) / MINUTE_MS);
}

function questionAnswer(standing: Standing, zone: string): BoardMachineAnswer['question'] {
  const words = questionWords(standing, zone);
  const { question, now } = standing;
  if (words === null || question === null) return null;
  return {
    ask: words.ask,
    meaning: words.meaning,
    answers: [
      ...words.yes.map(({ label, at }) => ({
        label,
        setting: settingJson(question.to),
        at: isoLocal(at, zone),
      })),
      { label: words.no, setting: settingJson(question.from), at: isoLocal(now, zone) },
    ],
  };
}

function jobAnswer(standing: Standing, zone: string): BoardMachineAnswer['job'] {
  const { job } = standing;
  const words = jobWords(standing, zone);
  const swap = job.kind === 'swap' ? job.swap : null;
  return {
    kind: job.kind,
    lead: words.lead,
    window: words.when?.window ?? null,
    lines: words.lines.filter((line) => line !== ''),
    windowStart: swap === null ? null : isoLocal(swap.windowStart, zone),
    latestStart: swap === null ? null : isoLocal(swap.latestStart, zone),
    done: words.done === null || swap === null ? null : { label: words.done, setting: settingJson(swap.to) },
  };
}
