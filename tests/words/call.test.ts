import { describe, expect, test } from 'vitest';
import type { Setting } from '@/lib/carb/machine';
import type { Plan } from '@/lib/plan/types';
import { addMinutes } from '@/lib/time/instant';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { ratio } from '@/lib/units/quantity';
import { type CallVoice, callSentence } from '@/lib/words/call';
import { at, FIRST_START, hourAt, on, plain, planOf, rounds, runOn, standOn, swapTo, ZONE } from './plan-of';

const voice = { zone: ZONE, units: US_UNITS };
const six = (...mains: readonly number[]) => mains.map((main) => on(main));
const firstThree = six(410, 410, 410, 420, 420, 420);
const swap = swapTo(3, on(410), on(420));

const callOf = (plan: Plan, as: CallVoice) => callSentence(standOn(plan), as);

describe('The call', () => {
  test('says what to start on, what to fit when, and that it holds', () => {
    expect(callOf(planOf(firstThree, { swaps: [swap] }), voice)).toBe(
      'Start on 410. Put in 420 between Round 3 and Round 4 (22:05 to 22:25); it holds to the end.',
    );
  });

  test('speaks on the clock of the event, not of the device', () => {
    const call = callOf(planOf(firstThree, { swaps: [swap] }), { ...voice, zone: 'Europe/Helsinki' });
    expect(call).toContain('(06:05 to 06:25)');
  });

  test('says once when no swap is needed', () => {
    expect(callOf(planOf(six(410, 410, 410, 410, 410, 410)), voice)).toBe('No swap: 410 holds all 6 runs.');
  });

  test('says tonight only when it is tonight', () => {
    const plan = planOf(six(410, 410));
    const call = (now: string) => callOf(plan, { ...voice, now: at(now) });
    expect(call('2027-01-16T12:00:00-06:00')).toBe('No swap tonight: 410 holds all 2 runs.');
    expect(call('2027-01-15T22:00:00-06:00')).toBe('No swap: 410 holds all 2 runs.');
  });

  test('says today for an event by day', () => {
    const sortedRuns = rounds(2, 60, at('2027-01-16T10:00:00-06:00'));
    const plan = planOf(six(410, 410), { sortedRuns });
    expect(callOf(plan, { ...voice, now: at('2027-01-16T08:00:00-06:00') })).toBe(
      'No swap today: 410 holds all 2 runs.',
    );
  });

  const lean = (run: number, setting: Setting, count = 12) =>
    runOn(run, setting, {
      grade: 'lean',
      chanceOfLean: ratio(count / 64),
      leanCount: { lean: count, of: 64 },
    });

  test('opens loudly when no jet is rich enough, and does not claim that the jet holds', () => {
    const warnings = [{ code: 'no-jet-rich-enough', run: 5, sizes: [430] }] as const;
    const runs = firstThree.map((setting, run) => (run === 5 ? lean(5, setting) : runOn(run, setting)));
    const plan = planOf(firstThree, { runs, swaps: [swap], warnings });
    expect(callOf(plan, voice)).toBe(
      'Do not race Round 6 on 420: risk of lean 12 in 64. No jet in the box will do: borrow 430. Without it sit the run out. If you must move, lift early and never hold it wide open. Start on 410. Put in 420 between Round 3 and Round 4 (22:05 to 22:25).',
    );
  });

  test('asks for the largest jet that several runs need, and says which runs are good without it', () => {
    const warnings = [
      { code: 'no-jet-rich-enough', run: 3, sizes: [430, 420] },
      { code: 'no-jet-rich-enough', run: 4, sizes: [440, 430] },
      { code: 'no-jet-rich-enough', run: 5, sizes: [430, 440] },
    ] as const;
    const settings = Array.from({ length: 6 }, () => on(420, 410));
    const runs = settings.map((setting, run) =>
      run < 3 ? runOn(run, setting) : lean(run, setting, 50 + run),
    );
    const call = callOf(planOf(settings, { runs, warnings }), voice);
    expect(call).toContain('Do not race Rounds 4 to 6 on 420 410: risk of lean up to 55 in 64.');
    expect(call).toContain('borrow 440.');
    expect(call).toContain('420 410 is within its limits for Rounds 1 to 3.');
    expect(call).not.toMatch(/hold(s|\b)(?! it wide open)/);
  });

  test('says nothing of borrowing where the own list has no jet that would do', () => {
    const warnings = [{ code: 'no-jet-rich-enough', run: 0, sizes: null }] as const;
    const call = callOf(planOf(six(410), { runs: [lean(0, on(410))], warnings }), voice);
    expect(call).not.toContain('borrow');
    expect(call).toContain('your list of jets has none that would');
  });

  test('names a jet that is too rich to run as no way out', () => {
    const warnings = [{ code: 'no-jet-lean-enough', run: 0, sizes: [185] }] as const;
    const runs = [runOn(0, on(340), { grade: 'drowned' })];
    expect(plain(callOf(planOf(six(340), { runs, warnings }), voice))).toBe(
      'Do not race Round 1 on 340: so rich that it loses over 20 % of its power and may not run at all. No jet in the box will do: borrow 185. Without it sit the run out.',
    );
  });

  test('opens with a run that stays lean because there is no time to swap', () => {
    const runs = [runOn(0, on(410)), lean(1, on(410))];
    const warnings = [{ code: 'swap-does-not-fit', run: 1, gapMinutes: 8, swapMinutes: 15 }] as const;
    expect(callOf(planOf(six(410, 410), { runs, warnings }), voice)).toBe(
      'Do not race Round 2 on 410: risk of lean 12 in 64. A richer jet is in the box, but no gap before it is long enough to put it in. Ask for a later start, or sit it out. If you must move, lift early and never hold it wide open. 410 is within its limits for Round 1.',
    );
  });

  test('does not say to start on what is not to be raced', () => {
    const settings = [on(410), on(410), on(420)];
    const between = swapTo(2, on(410), on(420));
    const callWith = (...leanRuns: readonly number[]) => {
      const runs = settings.map((setting, run) =>
        leanRuns.includes(run) ? lean(run, setting) : runOn(run, setting),
      );
      const warnings = leanRuns.map(
        (run) => ({ code: 'swap-does-not-fit', run, gapMinutes: 8, swapMinutes: 15 }) as const,
      );
      return callOf(planOf(settings, { runs, warnings, swaps: [between] }), voice);
    };
    expect(callWith(0, 1)).toMatch(/^Do not race Round 1 and Round 2 on 410: (?!.*Start on).*Put in 420/);
    expect(callWith(1)).toContain('Start on 410. Put in 420');
  });

  test('names staggered jets from the first carburettor to the last', () => {
    const staggered = on(410, 400, 410);
    expect(callOf(planOf([staggered, staggered]), voice)).toBe('No swap: 410 400 410 holds all 2 runs.');
  });

  test('tells a turn of the trim from a swap of jets', () => {
    const low = { mains: [410], trim: 2 };
    const high = { mains: [410], trim: 3 };
    const plan = planOf([low, high], { swaps: [swapTo(1, low, high, { kind: 'trim' })] });
    expect(callOf(plan, voice)).toBe(
      'Start on 410, trim 2. Turn trim to 3 between Round 1 and Round 2 (22:05 to 22:25); it holds to the end.',
    );
  });

  test('makes fitting other jets before the first run the first act', () => {
    const first = swapTo(0, on(410), on(420), { latestStart: at('2027-01-16T19:15:00-06:00') });
    expect(callOf(planOf(six(420, 420), { swaps: [first] }), voice)).toBe(
      'Put in 420 before Round 1 (by 19:15); it holds to the end.',
    );
  });

  test('leaves runs already made out of it', () => {
    const runs = firstThree.map((setting, run) =>
      run < 2 ? runOn(run, setting, { state: 'made' }) : runOn(run, setting),
    );
    expect(callOf(planOf(firstThree, { runs, swaps: [swap] }), voice)).toBe(
      'Stay on 410. Put in 420 between Round 3 and Round 4 (22:05 to 22:25); it holds to the end.',
    );
    const rest = six(410, 410, 410).map((setting, run) =>
      run === 0 ? runOn(run, setting, { state: 'made' }) : runOn(run, setting),
    );
    expect(callOf(planOf(six(410, 410, 410), { runs: rest }), voice)).toBe(
      'No swap: 410 holds Round 2 and Round 3.',
    );
  });

  test('ends where the hours end and says so', () => {
    const runs = firstThree.map((setting, run) =>
      run === 5 ? runOn(run, setting, { state: 'beyond-hours' }) : runOn(run, setting),
    );
    const plan = planOf(firstThree, { runs, swaps: [swap], hoursEnd: at('2027-01-16T23:59:00-06:00') });
    expect(callOf(plan, voice)).toBe(
      'Start on 410. Put in 420 between Round 3 and Round 4 (22:05 to 22:25); it holds to Round 5. The hours end at 23:59: no call for Round 6. Add hours to plan further.',
    );
  });

  test('has nothing to call when all runs are made', () => {
    const runs = six(410, 410).map((setting, run) => runOn(run, setting, { state: 'made' }));
    expect(callOf(planOf(six(410, 410), { runs }), voice)).toBe('All runs are over.');
  });

  test('says after the call, not before it, that every jet is too rich', () => {
    const warnings = [{ code: 'no-jet-lean-enough', run: 0, sizes: [385] }] as const;
    const runs = [runOn(0, on(400), { grade: 'rich' }), runOn(1, on(400))];
    expect(callOf(planOf(six(400, 400), { runs, warnings }), voice)).toBe(
      'No swap: 400 holds all 2 runs. No jet in the box is lean enough for Round 1: 385, no smaller, would be. It runs rich, which costs power.',
    );
  });

  test('gives a ride one setting and names its coldest hour', () => {
    const hours = [hourAt(FIRST_START, -12), hourAt(addMinutes(FIRST_START, 60), -28)];
    const plan = planOf(six(430, 430), { hours });
    expect(plain(callOf(plan, { zone: ZONE, units: METRIC_UNITS, ride: true }))).toBe(
      'Ride on 430, one setting for all of it: it is safe for the coldest hour (−28.0 °C at 20:30).',
    );
  });

  test('names the day of an act on another day of the event', () => {
    const late = swapTo(1, on(410), on(420), {
      windowStart: at('2027-01-17T20:00:00-06:00'),
      latestStart: at('2027-01-17T21:00:00-06:00'),
    });
    const plan = planOf(six(410, 420), { swaps: [late], sortedRuns: rounds(2, 26 * 60) });
    expect(callOf(plan, voice)).toContain('(Sun 20:00 to Sun 21:00)');
  });

  test('tells the two 01:30s of the night the clocks go back apart', () => {
    const night = swapTo(1, on(410), on(420), {
      windowStart: at('2027-11-07T01:30:00-05:00'),
      latestStart: at('2027-11-07T01:30:00-06:00'),
    });
    const sortedRuns = rounds(2, 180, at('2027-11-06T23:30:00-05:00'));
    expect(callOf(planOf(six(410, 420), { swaps: [night], sortedRuns }), voice)).toContain(
      '(01:30 before the clocks go back to 01:30 after the clocks go back)',
    );
  });
});
