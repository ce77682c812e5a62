import { describe, expect, test } from 'vitest';
import type { Plan, Swap } from '@/lib/plan/types';
import { horsepowerToWatt } from '@/lib/units/convert';
import { ratio } from '@/lib/units/quantity';
import { actSentences } from '@/lib/words/acts';
import { shareText } from '@/lib/words/fair';
import { horsepowerOf, powerText, signedHorsepower } from '@/lib/words/power-words';
import { oneSwapLess, runnerUpSentence } from '@/lib/words/price';
import { purposeSentence } from '@/lib/words/purpose';
import { swapWorthHint, worthSentences } from '@/lib/words/worth';
import { countOf, on, plain, planOf, rounds, runOn, swapTo, ZONE } from './plan-of';

const HP_200 = horsepowerToWatt(200);

describe('A share of power', () => {
  test('is told in horsepower where the power is rated', () => {
    expect(plain(powerText(ratio(0.012), HP_200))).toBe('1.2 % power (2.4 hp)');
    expect(plain(powerText(ratio(0.015), HP_200))).toBe('1.5 % power (3 hp)');
    expect(plain(powerText(ratio(0.012), null))).toBe('1.2 % power');
  });

  test('is never told as nothing', () => {
    for (const share of [0, 1e-9, 0.0001, 0.00049, 0.0005, 0.0007])
      for (const rated of [null, HP_200, horsepowerToWatt(0.1), horsepowerToWatt(5)])
        for (const digits of [1, 2])
          expect(plain(powerText(ratio(share), rated, digits))).not.toMatch(/^0\.0+ %|\(0\.?0* hp|−/);
    expect(plain(powerText(ratio(0.0001), HP_200))).toBe('less than 0.1 % power (0.2 hp)');
    expect(horsepowerOf(ratio(0.0001), HP_200)).toBeNull();
  });

  test('that changes has its sign, and none where too little is left to print', () => {
    expect(plain(signedHorsepower(ratio(0.02), HP_200))).toBe('+4 hp');
    expect(plain(signedHorsepower(ratio(-0.0123), HP_200))).toBe('−2.5 hp');
    expect(signedHorsepower(ratio(0.0001), HP_200)).toBe('');
    expect(signedHorsepower(ratio(0.02), null)).toBe('');
  });
});

const rated = (plan: Plan): Plan => ({ ...plan, worth: { ...plan.worth, ratedPower: HP_200 } });

describe('On a machine with rated power', () => {
  test('a reason, what is left out and the runner-up say the horsepower', () => {
    const swap = swapTo(1, on(410), on(400), {
      reason: { code: 'power', gain: ratio(0.0123) },
      ifSkipped: { chanceOfLean: ratio(0), count: { lean: 0, of: 64 }, loss: ratio(0.02) },
    });
    const runnerUp = { settings: [on(420), on(420)], margin: ratio(0.0042) };
    const plan = rated(planOf([on(410), on(400)], { swaps: [swap], runnerUp }));
    const [act] = actSentences(plan, { zone: ZONE });
    expect(plain(act?.why ?? null)).toBe('It gains 1.2 % power (2.5 hp) over 410.');
    expect(plain(act?.ifSkipped ?? null)).toBe('Left out, 410 loses 2.0 % power (4 hp).');
    expect(plain(runnerUpSentence(plan))).toContain('behind by 0.42 % power (0.8 hp).');
  });

  test('so does one swap less', () => {
    const runs = [runOn(0, on(410)), runOn(1, on(420))];
    const stayed = [runOn(0, on(410)), runOn(1, on(410))];
    const bySwapCount = [
      countOf(0, stayed, { loss: ratio(0.0075) }),
      countOf(1, runs, { loss: ratio(0.001) }),
    ];
    const swaps = [swapTo(1, on(410), on(420))];
    const plan = rated(planOf([on(410), on(420)], { runs, swaps, bySwapCount }));
    expect(plain(oneSwapLess(plan))).toBe('Without the swap: 0.65 % less power (1.3 hp).');
  });

  test('and a comparison by the clock', () => {
    const share = { change: ratio(0.021), low: ratio(0.006), high: ratio(0.036), power: null };
    expect(plain(shareText(share, HP_200))).toBe('+2.1 % (+0.6 % to +3.6 %), +4.2 hp');
    expect(plain(shareText(share, null))).toBe('+2.1 % (+0.6 % to +3.6 %)');
  });
});

describe('What a swap is worth', () => {
  const three = on(410, 400, 410);
  const worthOf = (swap: number, more: Partial<Plan> = {}) =>
    worthSentences(planOf([three], { worth: { swap: ratio(swap), ratedPower: HP_200 }, ...more })).map(plain);

  test('is said in percent, horsepower and work', () => {
    expect(worthOf(0.015)).toEqual([
      'A swap must save 1.5 % power (3 hp) to be worth opening 3 carburettors, added up over the runs it serves.',
      'A swap that keeps the lean limit is made whatever it costs.',
    ]);
    expect(worthOf(0)[0]).toBe(
      'A swap is made for any power it saves, though it means opening 3 carburettors.',
    );
  });

  test('is twice as much for whoever reads, and says why', () => {
    const worth = { swap: ratio(0.03), ratedPower: HP_200, doubled: true } as const;
    expect(worthSentences(planOf([three], { worth })).map(plain)).toEqual([
      'A swap must save 3 % power (6 hp) to be worth opening 3 carburettors, added up over the runs it serves.',
      'That is twice as much as without a reading: the next one may ask for the old jets back.',
      'A swap that keeps the lean limit is made whatever it costs.',
    ]);
    expect(worthSentences(planOf([three], { worth: { ...worth, swap: ratio(0) } })).map(plain)).toHaveLength(
      2,
    );
  });

  test('and in seconds where a run is timed: speed goes with the third root of power', () => {
    // 8 s × (0.985^(−1/3) − 1) = 0.0404 s, by hand.
    const sortedRuns = rounds(1).map((run) => ({ ...run, typicalSeconds: 8 }));
    expect(worthOf(0.015, { sortedRuns })[0]).toMatch(/the runs it serves: 0\.04 s of a run of 8 s\.$/);
  });

  test('is explained beside its field, with what counts where it is left empty', () => {
    // 10 s × (0.98^(−1/3) − 1) = 0.0676 s, by hand.
    const hint = plain(swapWorthHint({ swap: ratio(0.02), usual: ratio(0.01), ratedPower: HP_200 }));
    expect(hint).toContain('Empty: 1 % power (2 hp)');
    expect(hint).toContain('2 % power (4 hp) is 0.07 s of a run of 10 s.');
    expect(plain(swapWorthHint({ swap: ratio(0), usual: ratio(0.005), ratedPower: null }))).toContain(
      'At 0 any power is enough.',
    );
  });
});

describe('What swaps are made for', () => {
  const lean: Swap['reason'] = { code: 'old-turns-lean', run: 1, count: { lean: 5, of: 64 } };
  const power: Swap['reason'] = { code: 'power', gain: ratio(0.02) };
  const said = (...reasons: readonly Swap['reason'][]) =>
    purposeSentence(
      planOf([on(410), on(420)], {
        swaps: reasons.map((reason, i) => swapTo(i + 1, on(410), on(420), { reason })),
      }),
    );

  test('is counted', () => {
    expect(said(lean, lean)).toBe('Both swaps are for safety; none is for power.');
    expect(said(lean, { code: 'old-drowned', run: 2 }, lean)).toBe(
      'All 3 swaps are for safety; none is for power.',
    );
    expect(said(lean, power, { code: 'old-turns-rich', run: 2 }, { code: 'as-accepted' })).toBe(
      'Of 4 swaps: 1 for safety, 1 against running too rich, 1 for power, 1 as accepted.',
    );
    expect(said(power, power)).toBe('Of 2 swaps: none for safety, 2 for power.');
  });

  test('is not repeated where the one swap has said it, nor counted for a turn of the trim', () => {
    expect(said()).toBeNull();
    expect(said(lean)).toBeNull();
    const turn = swapTo(
      1,
      { mains: [410], trim: 1 },
      { mains: [410], trim: 2 },
      { kind: 'trim', reason: lean },
    );
    expect(purposeSentence(planOf([on(410)], { swaps: [turn, turn] }))).toBeNull();
  });
});
