import { describe, expect, test } from 'vitest';
import type { PressureDoubt } from '@/lib/air/pressure-doubt';
import type { PlanWarning } from '@/lib/plan/types';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { hectopascalToPascal } from '@/lib/units/convert';
import { metre } from '@/lib/units/quantity';
import { warningSentence, warningSentences } from '@/lib/words/warnings';
import { at, on, plain, planOf, ZONE } from './plan-of';

const plan = planOf([on(410), on(410), on(410)]);
const say = (warning: PlanWarning, units = US_UNITS) =>
  plain(warningSentence(warning, plan, { zone: ZONE, units }));

const HIGH: PressureDoubt = {
  kind: 'station',
  number: hectopascalToPascal(1022),
  elevation: metre(300),
  seaLevel: hectopascalToPascal(1059),
  likely: 'sea-level',
  against: null,
};

/** Every code a plan can warn with, so that none is left without words. */
const ALL: Readonly<Record<PlanWarning['code'], PlanWarning>> = {
  'no-jet-rich-enough': { code: 'no-jet-rich-enough', run: 2, sizes: [430] },
  'no-jet-lean-enough': { code: 'no-jet-lean-enough', run: 0, sizes: [380] },
  'swap-does-not-fit': { code: 'swap-does-not-fit', run: 1, gapMinutes: 9.6, swapMinutes: 15 },
  'run-beyond-hours': { code: 'run-beyond-hours', run: 2, hoursEnd: at('2027-01-16T23:00:00-06:00') },
  'run-before-hours': { code: 'run-before-hours', run: 0, hoursStart: at('2027-01-16T20:00:00-06:00') },
  'gap-in-hours': {
    code: 'gap-in-hours',
    from: at('2027-01-16T20:00:00-06:00'),
    to: at('2027-01-17T00:00:00-06:00'),
  },
  'pressure-is-estimate': { code: 'pressure-is-estimate' },
  'season-not-forecast': { code: 'season-not-forecast', run: 1, daysAhead: 48 },
  'model-misses-clear-cold': { code: 'model-misses-clear-cold', run: 1, colder: 1 },
  'reading-far-off': { code: 'reading-far-off', readingId: 'a', difference: 12 },
  'reading-pressure-far-off': { code: 'reading-pressure-far-off', readingId: 'b', difference: 16_000 },
  'baseline-pressure-in-doubt': { code: 'baseline-pressure-in-doubt', doubt: HIGH },
  'hours-pressure-in-doubt': {
    code: 'hours-pressure-in-doubt',
    at: at('2027-01-16T20:00:00-06:00'),
    doubt: { ...HIGH, against: hectopascalToPascal(1010) },
  },
  'reading-pressure-in-doubt': {
    code: 'reading-pressure-in-doubt',
    readingId: 'b',
    difference: 3600,
    doubt: { ...HIGH, against: hectopascalToPascal(1010) },
  },
  'baseline-pressure-without-elevation': {
    code: 'baseline-pressure-without-elevation',
    pressure: hectopascalToPascal(1013),
    tonight: hectopascalToPascal(965),
  },
  'reading-outside-hours': { code: 'reading-outside-hours', readingId: 'a' },
  'runs-overlap': { code: 'runs-overlap', run: 0, other: 1 },
  'runs-reordered': { code: 'runs-reordered' },
  'baseline-jet-not-in-box': { code: 'baseline-jet-not-in-box', size: 410 },
  'marking-in-doubt': { code: 'marking-in-doubt', doubt: { code: 'bore-too-wide', size: 410 } },
  'far-from-baseline-air': { code: 'far-from-baseline-air', run: 2 },
};

describe('A warning', () => {
  test.each(Object.values(ALL))(
    '$code has a sentence without codes, units of the core or holes',
    (warning) => {
      expect(say(warning)).toMatch(/^[A-Z][^{}]+\.$/);
      expect(say(warning)).not.toMatch(/undefined|NaN|\bPa\b|\bK\b|[a-z]-[a-z]+-[a-z]/);
    },
  );

  test('says what to borrow', () => {
    expect(say(ALL['no-jet-rich-enough'])).toBe(
      'No jet in the box will do for Round 3: borrow 430. Without it do not race this run.',
    );
  });

  test('never makes a gap longer than it is', () => {
    expect(say(ALL['swap-does-not-fit'])).toContain(
      'The gap before Round 2 is 9 minutes; a swap takes 15 minutes.',
    );
  });

  test('is said once of all runs it holds for', () => {
    const runs = planOf([1, 2, 3, 4, 5, 6].map(() => on(410)));
    const gap = (run: number, gapMinutes = 2) =>
      ({ code: 'swap-does-not-fit', run, gapMinutes, swapMinutes: 15 }) as const;
    const far = (run: number) => ({ code: 'far-from-baseline-air', run }) as const;
    const lean = (run: number) => ({ code: 'no-jet-rich-enough', run, sizes: [430] }) as const;
    const overlap = (run: number) => ({ code: 'runs-overlap', run, other: run + 1 }) as const;
    const said = (...warnings: readonly PlanWarning[]) =>
      warningSentences({ ...runs, warnings }, { zone: ZONE, units: US_UNITS }).map(({ message }) =>
        plain(message),
      );
    expect(said(gap(1), far(0), gap(2), far(5), gap(3), gap(4, 9))).toEqual([
      'The gaps before Rounds 2 to 4 are 2 minutes each; a swap takes 15 minutes. The plan does not count on a swap there.',
      'Round 1 and Round 6 are far from the air the baseline was proven in: the jets are a longer guess. Check the plugs before you hold it wide open.',
      'The gap before Round 5 is 9 minutes; a swap takes 15 minutes. The plan does not count on a swap there.',
    ]);
    expect(said(lean(2), lean(3))).toEqual([
      'No jet in the box will do for Round 3 and Round 4: borrow 430. Without it do not race these runs.',
    ]);
    // Every pair is to be looked at.
    expect(said(overlap(0), overlap(1))).toHaveLength(2);
  });

  test("speaks in the person's units", () => {
    expect(say(ALL['reading-far-off'])).toContain('22 °F warmer');
    expect(say(ALL['reading-far-off'], METRIC_UNITS)).toContain('12.0 °C warmer');
    expect(say({ code: 'reading-far-off', readingId: 'a', difference: -12 })).toContain('22 °F colder');
    expect(say(ALL['reading-pressure-far-off'])).toContain('4.72 inHg higher');
    expect(say(ALL['reading-pressure-far-off'], METRIC_UNITS)).toContain('160 hPa higher');
  });

  test('about a pressure asks what kind it is, names both numbers and says what to do', () => {
    expect(say(ALL['baseline-pressure-in-doubt'], METRIC_UNITS)).toBe(
      'Baseline: 1022 hPa as station pressure at 300 m would be 1059 hPa at sea level, which weather hardly ever does. Is it a sea-level number, as phones, maps and airports show? Confirm it as station pressure, or enter it as sea-level pressure.',
    );
    expect(say(ALL['hours-pressure-in-doubt'], METRIC_UNITS)).toContain(
      'far from the baseline’s pressure (1010 hPa at sea level). As a sea-level number it fits. Which is it?',
    );
    expect(say(ALL['reading-pressure-in-doubt'], METRIC_UNITS)).toContain(
      '36 hPa higher than the hours said',
    );
    expect(say(ALL['reading-pressure-in-doubt'], METRIC_UNITS)).toContain('enter it as sea-level pressure.');
    expect(say(ALL['baseline-pressure-without-elevation'], METRIC_UNITS)).toContain(
      'Add the elevation it was proven at.',
    );
  });

  test('keeps its code beside its words', () => {
    const warned = { ...plan, warnings: [ALL['runs-reordered'], ALL['pressure-is-estimate']] };
    const codes = warningSentences(warned, { zone: ZONE, units: US_UNITS }).map(({ code }) => code);
    expect(codes).toEqual(['runs-reordered', 'pressure-is-estimate']);
  });
});
