import { describe, expect, test } from 'vitest';
import type * as z from 'zod/mini';
import { planRequestsFromJson } from '@/lib/contract/plan-from-json';
import { planRequestSchema } from '@/lib/contract/plan-request';
import { pathText } from '@/lib/contract/problem';
import { seriesFromJson } from '@/lib/contract/series-from-json';
import { DEFAULT_OPTIONS } from '@/lib/plan/options';
import { expectOk } from '@/lib/result/result';
import { instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { hour, TWIN } from './sent';

type Body = z.input<typeof planRequestSchema>;

const run = (name: string, start: string, end: string) => ({
  name,
  start: `2027-01-16T${start}:00-06:00`,
  end: `2027-01-16T${end}:00-06:00`,
});
const EVENT: Body['event'] = {
  name: 'Night',
  timezone: 'America/Chicago',
  elevationM: 250,
  runs: [run('Round 1', '20:00', '20:10'), run('Round 2', '21:00', '21:10')],
};
const BODY: Body & Required<Pick<Body, 'hours'>> = {
  machine: TWIN,
  event: EVENT,
  hours: [hour('19:00', -10), hour('22:00', -16)],
};
const CLOCK = instant(Date.parse('2027-01-16T18:00:00Z'));

function requests(more: Partial<Body>, clock = CLOCK) {
  const body = planRequestSchema.parse({ ...BODY, ...more });
  const series = expectOk(seriesFromJson(body.hours ?? [], body.event.elevationM));
  return planRequestsFromJson(body, { series, clock });
}
const one = (more: Partial<Body> = {}, clock = CLOCK) => {
  const [placed] = expectOk(requests(more, clock));
  if (placed === undefined) throw new Error('expected a request');
  return placed.request;
};
const refused = (more: Partial<Body>) => {
  const result = requests(more);
  if (result.ok) throw new Error('expected a problem');
  return result.reason.map(({ path, reason }) => [pathText(path), reason.code]);
};
const on = (...mains: number[]) => ({ mains });

describe('A planning request as it is sent', () => {
  test('gets the default options where nothing was said', () => {
    expect(one().options).toEqual(DEFAULT_OPTIONS);
    const options = { seed: 7, worthItPercent: 1, scenarios: 128 };
    expect(one({ options, event: { ...EVENT, swapMinutes: 20, ride: true } }).options).toEqual({
      seed: 7,
      worthIt: 0.01,
      scenarios: 128,
      swapMinutes: 20,
      oneSetting: true,
    });
  });

  test('is planned from the clock, but a night that has begun from its first run', () => {
    expect(isoUtc(one().now)).toBe('2027-01-16T18:00:00Z');
    expect(isoUtc(one({}, instant(Date.parse('2027-03-01T00:00:00Z'))).now)).toBe('2027-01-17T02:00:00Z');
    expect(isoUtc(one({ now: '2027-01-16T20:30:00-06:00' }).now)).toBe('2027-01-17T02:30:00Z');
  });

  test('fills the trim of a setting that names none with the baseline position', () => {
    const machine = { ...TWIN, trim: { lowest: 1, highest: 5, baseline: 2, percentPerPosition: 1.5 } };
    expect(one({ machine, fitted: on(420, 410) }).fitted).toEqual({ mains: [420, 410], trim: 2 });
    expect(one({ machine, fitted: { mains: [420, 410], trim: 4 } }).fitted).toEqual({
      mains: [420, 410],
      trim: 4,
    });
  });

  test('with settings that are not this machine’s is refused at each of them', () => {
    expect(
      refused({
        fitted: on(410),
        accepted: [{ mains: [410, 400], trim: 3 }],
        made: [
          { run: 2, setting: on(410, 400) },
          { run: 0, setting: on(410, 400) },
          { run: 0, setting: on(420, 410) },
        ],
      }),
    ).toEqual([
      ['fitted.mains', 'mains-do-not-fit'],
      ['accepted[0].trim', 'trim-not-there'],
      ['accepted', 'settings-do-not-match-runs'],
      ['made[0].run', 'no-such-run'],
      ['made[2].run', 'run-made-twice'],
    ]);
  });

  test('for several machines keeps each where it was sent', () => {
    const { machine: _, ...shared } = BODY;
    const machines = [{ machine: TWIN }, { machine: { ...TWIN, name: 'Spare' }, fitted: on(420, 420) }];
    const placed = expectOk(requests({ ...shared, machine: undefined, machines }));
    expect(
      placed.map(({ path, request }) => [pathText(path), request.machine.name, request.fitted?.mains]),
    ).toEqual([
      ['machines[0]', 'Twin', undefined],
      ['machines[1]', 'Spare', [420, 420]],
    ]);
    const bad = [{ machine: TWIN }, { machine: TWIN, fitted: on(420) }];
    expect(refused({ machine: undefined, machines: bad })).toEqual([
      ['machines[1].fitted.mains', 'mains-do-not-fit'],
    ]);
  });

  test('with a slip in a year is refused, not computed for a century', () => {
    const slip = { name: 'Round 3', start: '2027-01-16T22:00:00-06:00', end: '2127-01-16T22:10:00-06:00' };
    expect(refused({ event: { ...EVENT, runs: [...EVENT.runs, slip] } })).toEqual([
      ['event.runs', 'event-too-long'],
    ]);
    const hours = [...BODY.hours, { time: '2127-01-16T22:00:00-06:00', temperatureC: -10 }];
    expect(refused({ hours })).toEqual([['hours', 'hours-too-far-apart']]);
  });

  test.each([
    [{ machine: undefined }, 'is missing'],
    [{ machines: [{ machine: TWIN }] }, 'not both'],
    [{ machine: undefined, machines: [{ machine: TWIN }], fitted: on(410, 400) }, 'inside each entry'],
    [{ hours: undefined }, 'is missing: send hours, or a place'],
    [{ place: { latitude: 46.1, longitude: -89.2 } }, 'hours or place, not both'],
  ])('says one thing once, not neither and not both (%#)', (more, words) => {
    const parsed = planRequestSchema.safeParse({ ...BODY, ...more });
    expect(parsed.error?.issues.map(({ message }) => message).join()).toContain(words);
  });
});
