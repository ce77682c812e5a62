import { describe, expect, it } from 'vitest';
import { forecastRecordFrom } from '@/lib/night/forecast-record';
import { type NightRecords, nightFrom } from '@/lib/night/night';
import { withAcceptedPlan } from '@/lib/night/records';
import type { Plan } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { addMinutes } from '@/lib/time/instant';
import { US_UNITS } from '@/lib/units/choice';
import { look, watchState } from '@/lib/words/watch-state';
import { BEFORE_THE_FIRST_RUN, demoRecords } from '@/tests/night/night-case';
import { planNight } from '@/tests/support/plan-night';
import { seededRandom } from '@/tests/support/seeded-random';
import { plain } from '@/tests/words/plan-of';
import { EVENING_C, forecastAnswer } from './forecast-answer';

const NOW = BEFORE_THE_FIRST_RUN;
const place = { name: 'Lake Orvana', latitude: 47.42, longitude: -93.61 };

/** The demo night on a forecast, its typed hours taken away. */
function recordsOn(celsius: readonly number[]): NightRecords {
  const records = demoRecords(NOW);
  const forecast = forecastRecordFrom({ answer: forecastAnswer({ celsius }), place, now: NOW, before: null });
  const { machine } = records;
  return {
    ...records,
    // Cheap swaps, so that the first of them can go as it turns colder.
    machine: {
      ...machine,
      value: { ...machine.value, machine: { ...machine.value.machine, swapWorthPercent: 0.5 } },
    },
    event: { ...records.event, value: { ...records.event.value, typed: null, forecastId: 'f1' } },
    forecast,
  };
}

function planned(records: NightRecords) {
  const night = expectOk(nightFrom(records));
  return { night, plan: expectOk(planNight(night, NOW)) };
}

const firstRecords = recordsOn(EVENING_C);
const accepted = withAcceptedPlan(
  firstRecords.event.value,
  firstRecords.machine.id,
  planned(firstRecords).plan,
);

/** How the watch sees another forecast of the night whose plan was accepted. */
function seen(celsius: readonly number[], { minutes = 0, revision = 2 } = {}) {
  const records = recordsOn(celsius);
  const { night, plan } = planned({ ...records, event: { ...records.event, value: accepted } });
  const state = watchState(night, plan, { zone: night.zone, units: US_UNITS, now: NOW });
  return { state, plan, revision, now: addMinutes(NOW, minutes), isAsked: false };
}

const colder = (minutes: number, revision = 2) =>
  seen(
    EVENING_C.map((celsius) => celsius - 5),
    { minutes, revision },
  );

describe('the watch', () => {
  const calm = seen(EVENING_C);
  const { look: first } = look(null, calm);

  it('has nothing to compare before a plan was accepted', () => {
    const { night, plan } = planned(firstRecords);
    expect(watchState(night, plan, { zone: night.zone, units: US_UNITS, now: NOW })).toEqual({
      status: 'nothing-accepted',
    });
  });

  it('sees the accepted plan in the forecast it was accepted on', () => {
    expect(calm.state.status).toBe('same');
    expect(calm.state).toMatchObject({ accepted: expect.stringMatching(/^Round 1 on 410 400 410\. Put in/) });
  });

  it('announces another next act once, with its reason, and that the plan holds again', () => {
    expect(colder(15).state.status).toBe('next-act-changed');
    const told = look(first, colder(15));
    expect(plain(told.say)).toMatch(/colder/);
    expect(look(told.look, colder(30)).say).toBeNull();
    const back = look(told.look, seen(EVENING_C, { minutes: 90 }));
    expect(back.say).toMatch(/^Your plan holds again\. Round 1 on/);
  });

  it('calls no plan kept that sends a run out lean, or that has no run to come', () => {
    const told = look(first, colder(15));
    const later = seen(EVENING_C, { minutes: 90 });
    const withRuns = (change: (run: Plan['runs'][number], place: number) => Plan['runs'][number]) => ({
      ...later,
      plan: { ...later.plan, runs: later.plan.runs.map(change) },
    });
    expect(look(told.look, later).say).not.toBeNull();
    for (const place of [0, 5])
      expect(
        look(
          told.look,
          withRuns((run, i) => (i === place ? { ...run, grade: 'lean' } : run)),
        ).say,
      ).toBeNull();
    expect(
      look(
        told.look,
        withRuns((run) => ({ ...run, state: 'past' })),
      ).say,
    ).toBeNull();
  });

  it('tells an act that comes and goes once an hour at most', () => {
    const told = look(first, colder(15));
    const back = look(told.look, seen(EVENING_C, { minutes: 30 }));
    expect(back.say).toBeNull();
    const again = look(back.look, colder(45));
    expect(again.say).toBeNull();
    const gone = look(again.look, seen(EVENING_C, { minutes: 100 }));
    expect(look(gone.look, colder(110)).say).not.toBeNull();
  });

  it('does not tell people what they did themselves', () => {
    expect(look(first, colder(15, 3)).say).toBeNull();
  });

  it('is silent on noise: forty forecasts within ±0.3 K of the accepted one, within an hour', () => {
    const { uniform } = seededRandom(31);
    const off = () => 0.6 * uniform() - 0.3;
    let [last, spoken] = [first, 0];
    for (let i = 1; i <= 40; i += 1) {
      const whole = off();
      const step = look(last, {
        ...seen(EVENING_C.map((celsius) => celsius + (i % 2 === 0 ? whole : off()))),
        now: addMinutes(NOW, i),
      });
      last = step.look;
      if (step.say !== null) spoken += 1;
    }
    // At most 5 % of replays may be heard.
    expect(spoken / 40).toBeLessThanOrEqual(0.05);
  });
});
