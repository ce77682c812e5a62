import { describe, expect, test } from 'vitest';
import type { AirProblem } from '@/lib/air/air';
import type { ContractReason } from '@/lib/contract/problem';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { hectopascalToPascal } from '@/lib/units/convert';
import type { EntryProblem } from '@/lib/units/entry-number';
import { airProblemSentence } from '@/lib/words/air-problems';
import { clockProblemSentence } from '@/lib/words/clock-problems';
import { contractProblemSentence } from '@/lib/words/contract-problems';
import { entryProblemSentence } from '@/lib/words/entry-problems';
import { planProblemSentence } from '@/lib/words/plan-problems';
import { at, plain, ZONE } from './plan-of';
import { AIR, PLAN } from './problem-examples';

const SENTENCE = /^["A-Z0-9−].+\.$/;

describe('A sea-level number typed as station pressure', () => {
  const problem: AirProblem = {
    code: 'sea-level-number-as-station',
    pressure: hectopascalToPascal(1015),
    elevation: 1600,
    stationIfSeaLevel: hectopascalToPascal(838),
  };

  test('is explained with what a barometer would show and what to do', () => {
    expect(plain(airProblemSentence(problem, METRIC_UNITS))).toBe(
      '1015 hPa cannot be the station pressure at 1,600 m: it looks like a sea-level number from a weather report. A barometer up there shows about 838 hPa. Enter it as sea-level pressure or altimeter setting, or leave the pressure out.',
    );
  });

  test("is explained in the person's units", () => {
    const words = plain(airProblemSentence(problem, US_UNITS));
    expect(words).toContain('29.97 inHg cannot be the station pressure at 5,249 ft');
    expect(words).toContain('about 24.75 inHg');
  });
});

describe('A problem', () => {
  test.each(Object.values(AIR))(
    'of the air ($code) is a whole sentence in both systems of units',
    (problem) => {
      for (const units of [US_UNITS, METRIC_UNITS]) {
        const words = plain(airProblemSentence(problem, units));
        expect(words).toMatch(SENTENCE);
        expect(words).not.toMatch(/undefined|NaN/);
      }
    },
  );

  test.each(Object.values(PLAN))('of the plan ($code) says what to do next', (problem) => {
    const words = planProblemSentence(problem, { zone: ZONE, runNames: ['Heat 1', 'Final'] });
    expect(words).toMatch(SENTENCE);
    expect(words).toMatch(/add|type|check|needs|split|date/i);
  });

  test('with a run names the run', () => {
    const words = planProblemSentence(PLAN['run-ends-before-it-starts'], {
      zone: ZONE,
      runNames: ['Heat 1', 'Final'],
    });
    expect(words).toBe(
      'Final ends before it starts. A run past midnight needs the next day’s date on its end.',
    );
  });

  test('with hours on another day names both days on the event clock', () => {
    const words = planProblemSentence(PLAN['hours-do-not-cover-any-run'], { zone: ZONE, runNames: [] });
    expect(words).toContain('from 2027-01-15 18:00 to 2027-01-16 06:00');
  });

  const SENT: readonly ContractReason[] = [
    { code: 'field', message: 'expected a number' },
    { code: 'same-hour-twice', at: at('2027-01-16T21:00:00-06:00') },
    { code: 'jet-not-in-list', size: 415 },
    { code: 'mains-do-not-fit', mains: 1, carburettors: 2 },
    { code: 'trim-not-there' },
    { code: 'trim-out-of-range', trim: 9, lowest: 1, highest: 5 },
    { code: 'no-such-run', run: 7, runs: 3 },
    { code: 'run-made-twice', run: 0 },
    { code: 'event-too-long', days: 365.2, limit: 31 },
    { code: 'hours-too-far-apart', days: 365.2, limit: 62 },
    { code: 'settings-do-not-match-runs', settings: 2, runs: 3 },
    { code: 'too-few-jets-listed', listed: 1 },
    { code: 'jet-not-positive', size: -1, area: 2 },
    { code: 'size-listed-twice', size: 410 },
    { code: 'area-not-rising', size: 410, next: 420 },
    AIR['temperature-out-of-range'],
    PLAN['empty-box'],
  ];

  test.each(SENT)('in what was sent ($code) has words', (reason) => {
    const words = contractProblemSentence(reason, { zone: ZONE, units: US_UNITS });
    expect(words.length).toBeGreaterThan(10);
    expect(words).not.toMatch(/undefined|NaN/);
  });

  test('of an hour sent twice names the hour on the event clock', () => {
    const twice: ContractReason = { code: 'same-hour-twice', at: at('2027-01-17T03:00:00Z') };
    expect(contractProblemSentence(twice, { zone: ZONE, units: US_UNITS })).toBe(
      '2027-01-16 21:00 is there twice. Keep the one you believe.',
    );
  });

  const ENTRIES: readonly EntryProblem[] = [
    { code: 'empty' },
    { code: 'not-a-number', text: 'minus ten' },
    { code: 'too-large', text: '1e309' },
    { code: 'ambiguous-mark', text: '1,600', decimal: 1.6, thousands: 1600 },
    { code: 'unknown-unit', unit: 'psi' },
  ];

  test.each(ENTRIES)('of an entry ($code) says what to type', (problem) => {
    expect(entryProblemSentence(problem, '-12.5')).toMatch(/-12\.5|without the mark/);
  });

  test('of an hour the clocks jump over names the jump', () => {
    const change = { at: at('2027-03-28T01:00:00Z'), minutes: 60, from: '02:00', to: '03:00' };
    expect(clockProblemSentence({ code: 'missing-hour', change })).toBe(
      'That time does not exist: the clocks jump from 02:00 to 03:00 that day. Choose a time before or after.',
    );
  });
});
