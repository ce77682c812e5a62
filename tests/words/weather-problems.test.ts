import { describe, expect, test } from 'vitest';
import { CONTRADICTIONS } from '@/lib/contract/contradiction';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import type { LookupProblem, WeatherProblem } from '@/lib/weather/problem';
import {
  contradictionSentence,
  lookupProblemSentence,
  sourceProblemText,
  triedSentence,
  weatherProblemSentence,
} from '@/lib/words/weather-problems';
import { at, plain, ZONE } from './plan-of';

const voice = { zone: ZONE, units: US_UNITS };
const say = (problem: WeatherProblem) => plain(weatherProblemSentence(problem, voice));
const look = (problem: LookupProblem) =>
  plain(lookupProblemSentence(problem, { zone: ZONE, units: METRIC_UNITS }));

describe('Having no weather', () => {
  test('names each service that was asked, what it did, and what to do meanwhile', () => {
    expect(
      say({
        code: 'all-sources-failed',
        tries: [
          { source: 'open-meteo', problem: { code: 'timeout' } },
          { source: 'met-norway', problem: { code: 'bad-status', status: 500 } },
          { source: 'weather-gov', problem: { code: 'outside-area' } },
        ],
        retryAfterSeconds: 30,
      }),
    ).toBe(
      'No weather service answered (Open-Meteo took too long, MET Norway had an error and the US National Weather Service does not cover this place). Try again in 30 seconds. Type the hours yourself meanwhile.',
    );
  });

  test('rounds a wait up, never down', () => {
    const wait = (retryAfterSeconds: number) =>
      say({ code: 'all-sources-failed', tries: [], retryAfterSeconds });
    expect(wait(0.2)).toContain('in 1 second.');
    expect(wait(91)).toContain('in 2 minutes');
  });

  test('outside the forecast says how far it goes, on the event clock', () => {
    const problem = {
      code: 'outside-forecast',
      hoursStart: at('2027-01-10T06:00:00Z'),
      hoursEnd: at('2027-01-20T06:00:00Z'),
    } as const;
    expect(say(problem)).toContain('from 2027-01-10 00:00 to 2027-01-20 00:00');
  });

  test('at coordinates that are none says what they may be', () => {
    expect(say({ code: 'not-a-place', latitude: 146.1, longitude: -89.2 })).toContain(
      '146.1000, −89.2000 is no place',
    );
    expect(look({ code: 'elevation-out-of-range', elevation: 9000 })).toContain('9,000 m');
  });

  test.each<LookupProblem>([
    { code: 'name-too-short' },
    { code: 'not-in-archive', at: at('2027-01-10T06:00:00Z') },
    {
      code: 'lookup-failed',
      problem: { code: 'rate-limited', until: at('2027-01-10T06:00:00Z') },
      retryAfterSeconds: 60,
    },
  ])('after a look-up ($code) says what to do instead', (problem) => {
    expect(look(problem)).toMatch(/type/i);
  });
});

describe('A service that contradicts itself', () => {
  const nine = at('2027-01-16T03:00:00Z');
  const told = { service: 'Open-Meteo', clock: { zone: ZONE, from: nine } };

  test('is named with what it did, in words that are its own for each contradiction', () => {
    const texts = CONTRADICTIONS.map((code) => sourceProblemText({ code }));
    expect(new Set(texts).size).toBe(CONTRADICTIONS.length);
    expect(triedSentence([{ source: 'open-meteo', code: 'other-place' }])).toBe(
      'Open-Meteo answered for another place.',
    );
  });

  test('in some hours has them named, with the reason and what to do', () => {
    const hour = (n: number, code: string) => ({ at: instant(nine + n * HOUR_MS), code });
    expect(contradictionSentence([hour(0, 'jump')], told)).toBe(
      'Open-Meteo sent numbers that jump as no weather does for 21:00: left out. Check that hour with a reading.',
    );
    expect(
      plain(contradictionSentence([hour(0, 'two-values'), hour(1, 'two-values'), hour(3, 'jump')], told)),
    ).toBe(
      'Open-Meteo gave two values at once for 21:00 to 22:00: left out. Check those hours with a reading. Open-Meteo sent numbers that jump as no weather does for 00:00: left out. Check that hour with a reading.',
    );
  });

  test('in no hour has nothing said of it, and a reason of a later version is still told', () => {
    expect(contradictionSentence([], told)).toBe('');
    expect(contradictionSentence([{ at: nine, code: 'unheard-of' }], told)).toContain(
      'cannot be right for 21:00',
    );
  });
});
