import fc from 'fast-check';
import { expect } from 'vitest';
import type { Acts } from '@/components/night/use-acts';
import type { Setting } from '@/lib/carb/machine';
import { withRunTold } from '@/lib/night/records';
import { withReading } from '@/lib/night/stored-readings';
import { makePlan } from '@/lib/plan/make-plan';
import { expectOk } from '@/lib/result/result';
import { pastRunChoices } from '@/lib/standing/past-run';
import type { Standing } from '@/lib/standing/standing';
import { eventRecordSchema, type LogRecord, logRecordSchema } from '@/lib/store/records';
import { isoUtc } from '@/lib/time/zone';
import { kelvinToCelsius, pascalToHectopascal } from '@/lib/units/convert';
import { questionWords } from '@/lib/words/question';
import { type Act, engineOf, runsOf, type WalkedEvening } from './walked-evening';

/** What somebody said of the engine: all that a plan may go by. */
export type Said = {
  /** null: nothing was said, the baseline stands for it. */
  readonly inNow: Setting | null;
  /** From when on the last word counts. */
  readonly at: number;
  /** By run as it stands in the record. */
  readonly made: ReadonlyMap<number, Setting>;
  readonly out: boolean;
};

type Tab = 0 | 1;
type Part = 'engine' | 'runs';
type Undo = { readonly part: Part; readonly said: Said } & Act;

/** The evening as those who speak know it. */
export type Heard = {
  said: Said;
  /** What each tab can take back. */
  readonly undo: [Undo | null, Undo | null];
  /** Every setting that was ever said to be in. */
  readonly settings: Setting[];
};

export const nothingHeard = (): Heard => ({
  said: { inNow: null, at: Number.NEGATIVE_INFINITY, made: new Map(), out: false },
  undo: [null, null],
  settings: [],
});

/** One thing that happens on an evening. */
export type Step = fc.AsyncCommand<Heard, WalkedEvening>;
type Run = (heard: Heard, evening: WalkedEvening) => Promise<void>;

const step = (name: string, run: Run): Step => ({ check: () => true, run, toString: () => name });

/** A press on what a tab shows, and what it says of the engine; null where there is nothing to press. */
type Press = (
  standing: Standing,
  now: number,
) => {
  readonly act: (acts: Acts) => void;
  readonly part?: Part;
  readonly said?: (said: Said) => Partial<Said>;
} | null;

/** Who has just looked presses what is true; the other tab presses on what it showed a while ago. */
const press = (name: string, tab: Tab, choose: Press): Step =>
  step(`${name}${tab === 0 ? '' : ' in the other tab'}`, async (heard, evening) => {
    if (tab === 0) await evening.look(0);
    const pressed = choose(evening.shown(tab).standing, evening.now);
    if (pressed === null) return;
    const act = await evening.press(tab, pressed.act);
    const { part = 'engine', said = () => ({}) } = pressed;
    heard.undo[tab] = { part, said: heard.said, ...act };
    heard.said = { ...heard.said, ...said(heard.said) };
    if (heard.said.inNow !== null) heard.settings.push(heard.said.inNow);
  });

const tab = fc.constantFrom<Tab>(0, 0, 0, 1);
const told = (setting: Setting, at: number) => () => ({ inNow: setting, at });

const accept = tab.map((on) => press('accept', on, () => ({ act: (acts) => acts.accept() })));

const fitAsTold = tab.map((on) =>
  press('fit what the job says', on, ({ job }, now) => {
    if (job.kind !== 'swap') return null;
    const { to } = job.swap;
    return { act: (acts) => acts.fit(to), said: told(to, now) };
  }),
);

const fitOther = fc.tuple(tab, fc.nat({ max: 9 })).map(([on, k]) =>
  press(`fit jet ${k} of the box`, on, ({ plan }, now) => {
    const sizes = [
      ...new Set([...plan.baseline.mains, ...plan.runs.flatMap(({ setting }) => setting.mains)]),
    ];
    const size = sizes[k % sizes.length]! + 10 * (Math.floor(k / sizes.length) % 2);
    const setting = { ...plan.inNow.setting, mains: plan.baseline.mains.map(() => size) };
    return { act: (acts) => acts.fit(setting), said: told(setting, now) };
  }),
);

const answer = fc.tuple(tab, fc.constantFrom('since', 'now', 'no', 'else')).map(([on, which]) =>
  press(`answer ${which}`, on, (standing, now) => {
    const { question } = standing;
    const words = questionWords(standing, 'UTC');
    if (question === null || words === null) return null;
    const yes = which === 'since' ? words.yes.at(0)! : words.yes.at(-1)!;
    const setting = { since: question.to, now: question.to, no: question.from, else: standing.plan.baseline }[
      which
    ];
    const at = which === 'since' || which === 'now' ? yes.at : now;
    return { act: (acts) => acts.fit(setting!, at as typeof yes.at), said: told(setting!, at) };
  }),
);

/** The run the dialog offers first: the next that is not over by the clock and not told. */
const next = ({ plan, now }: Standing): number | null => {
  const run = plan.sortedRuns.findIndex(({ end }, i) => end > now && plan.runs[i]?.state !== 'made');
  return run === -1 ? null : run;
};

const runMade = fc.tuple(tab, fc.boolean()).map(([on, before]) =>
  press('a run is made', on, (standing, now) => {
    const first = next(standing) ?? standing.plan.runs.length;
    const run = before ? first - 1 : first;
    if (standing.plan.runs[run] === undefined) return null;
    const { setting } = standing.inNow;
    const given = standing.plan.order[run]!;
    return {
      act: (acts) => acts.runMade(run, setting),
      said: ({ made }) => ({ inNow: setting, at: now, made: new Map([...made, [given, setting]]) }),
    };
  }),
);

/** The log asks what a past run was made on; where nothing was said of any later time, that is also what is in since. */
const tellPast = fc.boolean().map((asPlanned) =>
  step(`a past run is told ${asPlanned ? 'as planned' : 'as it was in'}`, async (heard, evening) => {
    await evening.look(0);
    const { night, standing } = evening.shown(0);
    const { plan } = standing;
    const past = plan.runs.findLast(({ state }) => state === 'past');
    const choices = past === undefined ? null : pastRunChoices(night.request, plan, past);
    if (past === undefined || choices === null) return;
    const setting = (asPlanned ? choices.accepted : null) ?? choices.said;
    const given = plan.order[past.run]!;
    await evening.change((record) =>
      withRunTold(record, { machineId: evening.machineId, run: given, setting }),
    );
    const { at, made } = heard.said;
    const start = plan.sortedRuns[past.run]!.start;
    const later = at > start || plan.runs.some(({ run, state }) => run > past.run && state === 'made');
    heard.said = { ...heard.said, made: new Map([...made, [given, setting]]) };
    if (!later) heard.said = { ...heard.said, ...told(setting, start)() };
    heard.settings.push(setting);
  }),
);

const delay = fc.tuple(tab, fc.constantFrom(-15, 20, 30, 50)).map(([on, minutes]) =>
  press(`all ${minutes} minutes later`, on, (standing) => {
    const run = next(standing);
    return run === null ? null : { act: (acts) => acts.moveRuns(run, minutes), part: 'runs' };
  }),
);

const startNow = tab.map((on) =>
  press('the next run starts now', on, (standing) => {
    const run = next(standing);
    return run === null ? null : { act: (acts) => acts.startNow(run), part: 'runs' };
  }),
);

const addRun = tab.map((on) =>
  press('one more run', on, ({ plan }) =>
    plan.runs.length > 11 ? null : { act: (acts) => acts.addRun(), part: 'runs' },
  ),
);

const knockOut = tab.map((on) =>
  press('knocked out', on, ({ job }) =>
    job.kind === 'out' ? null : { act: (acts) => acts.knockOut(), said: () => ({ out: true }) },
  ),
);

const comeBack = tab.map((on) =>
  press('come back', on, ({ job }) =>
    job.kind === 'out' ? { act: (acts) => acts.comeBack(), said: () => ({ out: false }) } : null,
  ),
);

const wait = fc.constantFrom(3, 25, 45, 90, 120).map((minutes) =>
  step(`wait ${minutes} minutes`, async (_, evening) => {
    const before = await evening.record();
    evening.wait(minutes);
    expect(await evening.record()).toEqual(before);
  }),
);

const look = fc.constant(step('look at the other tab', (_, evening) => evening.look(1)));

const read = fc.constantFrom(-4, -2, 1, 3).map((kelvins) =>
  step(`read ${kelvins} K beside the hours`, async (_, evening) => {
    await evening.look(0);
    const { mixture, plan } = evening.shown(0).standing;
    const hour = plan.hours.find(({ at }) => at >= evening.now);
    if (mixture === null || hour === undefined) return;
    const temperatureC = Math.round(kelvinToCelsius(hour.air.temperature)) + kelvins;
    const reading = { id: `r${evening.now}`, time: isoUtc(evening.now), temperatureC, confirmed: true };
    await evening.change((record) => withReading(record, reading));
  }),
);

/** The last run that was told, judged; a lean one may make no run to come look safer than before. */
const log = fc.constantFrom<LogRecord['verdict']>('lean', 'lean', 'right', 'rich').map((verdict) =>
  step(`log ${verdict}`, async (_, evening) => {
    await evening.look(0);
    const { plan } = evening.shown(0).standing;
    const run = plan.runs.findLast(({ state }) => state === 'made');
    if (run === undefined) return;
    const { air, setting } = run;
    await evening.log(
      logRecordSchema.parse({
        machineId: evening.machineId,
        run: plan.sortedRuns[run.run]!.name,
        at: isoUtc(evening.now),
        air: {
          temperatureC: kelvinToCelsius(air.temperature),
          pressureHpa: pascalToHectopascal(air.pressure),
          relativeHumidity: air.relativeHumidity,
        },
        setting: { mains: [...setting.mains], trim: setting.trim },
        verdict,
      }),
    );
    await evening.look(0);
    if (verdict === 'lean') expectNoSafer(evening.shown(0).standing, plan);
  }),
);

function expectNoSafer({ plan }: Standing, before: Standing['plan']): void {
  for (const run of plan.runs.filter(({ state }) => state === 'planned'))
    expect(run.ifKept.leanCount.lean).toBeGreaterThanOrEqual(before.runs[run.run]!.ifKept.leanCount.lean);
}

/** Undo gives back the very record; where somebody said something since, it changes nothing and says so. */
const undo = tab.map((on) =>
  step(`undo${on === 0 ? '' : ' in the other tab'}`, async (heard, evening) => {
    const undone = heard.undo[on];
    heard.undo[on] = null;
    if (undone === null || !evening.canUndo(on)) return;
    const { machineId } = evening;
    const partOf = undone.part === 'engine' ? engineOf : runsOf;
    const { before, after, words } = await evening.undo(on);
    if (JSON.stringify(partOf(before, machineId)) !== JSON.stringify(partOf(undone.after, machineId))) {
      expect(after).toEqual(before);
      expect(words).toContain('told meanwhile');
      return;
    }
    expect(partOf(after, machineId)).toEqual(partOf(undone.before, machineId));
    if (undone.part === 'engine') heard.said = undone.said;
    // Nothing else happened since: it is the very record of before.
    if (JSON.stringify(before) === JSON.stringify(undone.after)) expect(after).toEqual(undone.before);
  }),
);

/** All that is known is in the store: what is read from it after a reload is what was there. */
const reload = fc.constant(
  step('reload', async (_, evening) => {
    const record = await evening.record();
    expect(eventRecordSchema.parse(JSON.parse(JSON.stringify(record)))).toEqual(record);
    await evening.look(0);
    await evening.look(1);
  }),
);

/** The run log of before stays behind; what a verdict of tonight asks for goes along. */
const share = fc.constant(
  step('share and open', async (heard, evening) => {
    await evening.look(0);
    const { standing, night } = evening.shown(0);
    await evening.shareAndOpen();
    heard.undo.fill(null);
    if (heard.said.inNow !== null) heard.said = { ...heard.said, at: evening.now };
    const opened = evening.shown(0);
    expect(opened.night.machine.tonight).toEqual(night.machine.tonight);
    const again = expectOk(makePlan({ ...opened.night.request, now: evening.now }));
    expect(again.runs.map(({ state }) => state)).toEqual(standing.plan.runs.map(({ state }) => state));
  }),
);

export const anySteps = fc.commands(
  [
    ...[
      accept,
      accept,
      fitAsTold,
      fitOther,
      answer,
      answer,
      runMade,
      tellPast,
      delay,
      startNow,
      addRun,
      knockOut,
      comeBack,
    ],
    ...[wait, wait, wait, wait, look, read, log, log, undo, reload, share],
  ],
  { maxCommands: 16, size: 'max' },
);
