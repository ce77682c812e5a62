import type { Setting } from '@/lib/carb/machine';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import type { Fitting, Plan } from '@/lib/plan/types';
import { classOf, eventOfRacer } from '@/lib/store/racer-event';
import type { EventRecord } from '@/lib/store/records';
import { addMinutes, type Instant, instant, MINUTE_MS } from '@/lib/time/instant';
import { isoLocal, isoUtc } from '@/lib/time/zone';
import { kelvinToCelsius } from '@/lib/units/convert';
import { plainNumber } from '@/lib/units/format';

type StoredSetting = EventRecord['fitted'][string];
type MachinePart = Pick<
  EventRecord,
  'fitted' | 'fittings' | 'made' | 'accepted' | 'acceptedAir' | 'planned' | 'outFrom'
>;

const stored = ({ mains, trim }: Setting): StoredSetting => ({ mains: [...mains], trim });

/** As many as a night of sixty runs can ask for. */
const MOST_FITTINGS = 60;

/** The event after a person said what is in the engine, and from when on. */
export function withFitted(record: EventRecord, machineId: string, { at, setting }: Fitting): EventRecord {
  const known = (record.fittings?.[machineId] ?? []).filter((each) => instantFromJson(each.at) < at);
  const fittings = [...known, { at: isoUtc(at), setting: stored(setting) }].slice(-MOST_FITTINGS);
  return {
    ...record,
    fitted: { ...record.fitted, [machineId]: stored(setting) },
    fittings: { ...record.fittings, [machineId]: fittings },
  };
}

type Made = { readonly machineId: string; readonly run: number; readonly setting: Setting };

/** The event after a run was made; `run` counts the event's runs as they stand in the record. */
export function withMade(record: EventRecord, { machineId, run, setting }: Made): EventRecord {
  const before = (record.made[machineId] ?? []).filter((made) => made.run !== run);
  return { ...record, made: { ...record.made, [machineId]: [...before, { run, setting: stored(setting) }] } };
}

/**
 * The event after somebody said what a run of the past was made on. Where nothing was said of any later time, that is
 * also what is in since: it is the last thing that is known.
 */
export function withRunTold(record: EventRecord, { machineId, run, setting }: Made): EventRecord {
  const starts = eventOfRacer(record, machineId).runs.map(({ start }) => instantFromJson(start));
  const told = withMade(record, { machineId, run, setting });
  const at = starts[run];
  if (at === undefined) return told;
  const fitted = (record.fittings?.[machineId] ?? []).map((each) => instantFromJson(each.at));
  const made = (record.made[machineId] ?? []).flatMap((each) => starts[each.run] ?? []);
  return [...fitted, ...made].some((later) => later > at)
    ? told
    : withFitted(told, machineId, { at, setting });
}

/** The event with the plan a person acts on, so that a new plan changes its mind only for a reason. */
export function withAccepted(
  record: EventRecord,
  machineId: string,
  settings: readonly Setting[],
): EventRecord {
  return { ...record, accepted: { ...record.accepted, [machineId]: settings.map(stored) } };
}

/** The same with the air the plan was made for, so that a change can be told with its reason. */
export function withAcceptedPlan(record: EventRecord, machineId: string, plan: Plan): EventRecord {
  const air = plan.runs.flatMap(({ run, air: { temperature } }) => {
    const start = plan.sortedRuns[run]?.start;
    if (start === undefined) return [];
    return [{ start: isoUtc(start), temperatureC: plainNumber(kelvinToCelsius(temperature), 2) }];
  });
  return {
    ...withAccepted(record, machineId, settingsAsGiven(plan)),
    acceptedAir: { ...record.acceptedAir, [machineId]: air },
    planned: { ...record.planned, [machineId]: plannedWith(record.planned?.[machineId] ?? [], plan) },
  };
}

type Planned = NonNullable<EventRecord['planned']>[string];

/** Runs to come as they are planned now; a run that has begun keeps what it was planned on before. */
function plannedWith(before: Planned, plan: Plan): Planned {
  const now = plan.runs.flatMap(
    ({ run, state, setting, air: { temperature } }): Planned =>
      state === 'planned'
        ? [
            {
              run: plan.order[run] ?? run,
              setting: stored(setting),
              temperatureC: plainNumber(kelvinToCelsius(temperature), 2),
            },
          ]
        : [],
  );
  const again = new Set(now.map(({ run }) => run));
  return [...before.filter(({ run }) => !again.has(run)), ...now];
}

/** The event with what it said about one machine before; the way back from the acts above. */
export function withMachineAsBefore(
  record: EventRecord,
  machineId: string,
  before: MachinePart,
): EventRecord {
  return {
    ...record,
    fitted: putBack(record.fitted, machineId, before.fitted[machineId]),
    fittings: putBackIn(record.fittings, machineId, before.fittings),
    outFrom: putBackIn(record.outFrom, machineId, before.outFrom),
    made: putBack(record.made, machineId, before.made[machineId]),
    accepted: putBack(record.accepted, machineId, before.accepted[machineId]),
    acceptedAir: putBackIn(record.acceptedAir, machineId, before.acceptedAir),
    planned: putBackIn(record.planned, machineId, before.planned),
  };
}

/** All that an event says about one machine: what the way back puts in its old place. */
export function machinePart(record: EventRecord, machineId: string): readonly unknown[] {
  const { fitted, fittings, outFrom, made, accepted, acceptedAir } = record;
  return [fitted, fittings, outFrom, made, accepted, acceptedAir].map((all) => all?.[machineId] ?? null);
}

function putBack<V>(all: Record<string, V>, key: string, value: V | undefined): Record<string, V> {
  const { [key]: _, ...others } = all;
  return value === undefined ? others : { ...others, [key]: value };
}

/** The same in what a record may lack: where it lacked it before and nothing is left, it does again. */
function putBackIn<V>(
  all: Record<string, V> | undefined,
  key: string,
  before: Record<string, V> | undefined,
): Record<string, V> | undefined {
  const back = putBack(all ?? {}, key, before?.[key]);
  return before === undefined && Object.keys(back).length === 0 ? undefined : back;
}

/** The event after a machine was knocked out, or came back; a run that has begun by then is still its own. */
export function withOutFrom(record: EventRecord, machineId: string, at: Instant | null): EventRecord {
  const outFrom = putBack(record.outFrom ?? {}, machineId, at === null ? undefined : isoUtc(at));
  return { ...record, outFrom };
}

/**
 * The event with one more run after a machine's last, as far behind it and as long as the last two were apart; an hour
 * behind where there is only one.
 */
export function withRunAdded(record: EventRecord, machineId: string): EventRecord {
  const added = withRunsOf(record, machineId, (all) => {
    const sorted = [...all].sort((a, b) => instantFromJson(a.start) - instantFromJson(b.start));
    const [last, before] = [sorted.at(-1), sorted.at(-2)];
    if (last === undefined) return all;
    const start = instantFromJson(last.start);
    const apart = before === undefined ? 60 : (start - instantFromJson(before.start)) / MINUTE_MS;
    const move = (time: string) =>
      isoLocal(addMinutes(instantFromJson(time), Math.max(apart, 1)), record.event.timezone);
    const added = { ...last, name: nameAfter(last.name), start: move(last.start), end: move(last.end) };
    return [...all, added];
  });
  return withAcceptedFor(added, record);
}

/**
 * A plan that was accepted goes on through a run that came to the end, on the jets of the run before it: what it had put
 * in is still to be asked about.
 */
function withAcceptedFor(record: EventRecord, before: EventRecord): EventRecord {
  const accepted = Object.entries(record.accepted).map(([id, plan]) => {
    const past = eventOfRacer(before, id).runs;
    const now = eventOfRacer(record, id).runs;
    if (plan.length !== past.length || now.length === past.length) return [id, plan] as const;
    if (now.length < past.length) return [id, plan.slice(0, now.length)] as const;
    const starts = past.map(({ start }) => instantFromJson(start));
    const last = plan[starts.indexOf(instant(Math.max(...starts)))];
    return [id, last === undefined ? plan : [...plan, last]] as const;
  });
  return { ...record, accepted: Object.fromEntries(accepted) };
}

/** "Round 9" after "Round 8"; "Final 2" after "Final". */
function nameAfter(name: string): string {
  const [, stem, number] = /^(.*?)(\d+)$/.exec(name) ?? [];
  return number === undefined ? `${name} 2` : `${stem}${Number(number) + 1}`;
}

type RunsMoved = { readonly machineId: string; readonly runs: readonly number[]; readonly minutes: number };

/** The event with some of the runs a machine takes part in moved, counted as they stand in the record. */
export function withRunsMoved(record: EventRecord, { machineId, runs, minutes }: RunsMoved): EventRecord {
  const { timezone } = record.event;
  const move = (time: string) => isoLocal(addMinutes(instantFromJson(time), minutes), timezone);
  return withRunsOf(record, machineId, (all) =>
    all.map((run, i) => (runs.includes(i) ? { ...run, start: move(run.start), end: move(run.end) } : run)),
  );
}

type RunsFrom = { readonly machineId: string; readonly runs: readonly number[]; readonly at: Instant };

/** The event after the first of some runs has begun, the others moved along; whatever time they had by then. */
export function withRunsFrom(record: EventRecord, { machineId, runs, at }: RunsFrom): EventRecord {
  const start = eventOfRacer(record, machineId).runs[runs[0] ?? -1]?.start;
  if (start === undefined) return record;
  const minutes = Math.round((at - instantFromJson(start)) / MINUTE_MS);
  return withRunsMoved(record, { machineId, runs, minutes });
}

type RunsBefore = { readonly machineId: string; readonly before: EventRecord };

/** The way back: the times the runs had, where they are still the same runs. */
export function withRunsAsBefore(record: EventRecord, { machineId, before }: RunsBefore): EventRecord {
  const past = eventOfRacer(before, machineId).runs;
  return withRunsOf(record, machineId, (all) =>
    all.map((run, i) => {
      const was = past[i];
      return was?.name === run.name ? { ...run, start: was.start, end: was.end } : run;
    }),
  );
}

/** The way back from a run added: it goes again where it is still the last. */
export function withoutAddedRun(record: EventRecord, { machineId, before }: RunsBefore): EventRecord {
  const past = eventOfRacer(before, machineId).runs.length;
  const without = withRunsOf(record, machineId, (all) =>
    all.length === past + 1 ? all.slice(0, past) : all,
  );
  return withAcceptedFor(without, record);
}

type Runs = EventRecord['event']['runs'];

/** Changes the runs of a machine's class, or those of everybody where it is in none. */
function withRunsOf(record: EventRecord, machineId: string, change: (runs: Runs) => Runs): EventRecord {
  const own = classOf(record, machineId);
  const { club, event } = record;
  if (own === null || club === undefined) return { ...record, event: { ...event, runs: change(event.runs) } };
  const classes = club.classes.map((each) =>
    each.id === own.id ? { ...each, runs: change(each.runs) } : each,
  );
  return { ...record, club: { ...club, classes } };
}
