import { describe, expect, it } from 'vitest';
import { isoLocal, isoUtc } from '@/lib/time/zone';
import { lines, pasted, problem, skips } from './pasting';

const berlin = { zone: 'Europe/Berlin', temperatureUnit: 'C' } as const;

describe('pasted times', () => {
  it('cross midnight', () => {
    expect(lines(pasted('22:00\t-9\n23:00\t-10\n00:00\t-11\n01:00\t-12', { temperatureUnit: 'C' }))).toEqual([
      '01-16 22:00 -9',
      '01-16 23:00 -10',
      '01-17 00:00 -11',
      '01-17 01:00 -12',
    ]);
  });

  it('may call midnight 24:00 and go on at 1:00', () => {
    expect(lines(pasted('23:00\t-9\n24:00\t-10\n01:00\t-11', { temperatureUnit: 'C' }))).toEqual([
      '01-16 23:00 -9',
      '01-17 00:00 -10',
      '01-17 01:00 -11',
    ]);
  });

  it('say AM and PM in every way people write them', () => {
    const clocks = ['11 PM', '11:30pm', '12 a.m.', '12:30 AM', '1 am', '2:00a'];
    expect(
      pasted(clocks.map((clock) => `${clock}\t5`).join('\n')).rows.map(({ at }) =>
        isoLocal(at, 'America/Chicago').slice(5, 16),
      ),
    ).toEqual(['01-16T23:00', '01-16T23:30', '01-17T00:00', '01-17T00:30', '01-17T01:00', '01-17T02:00']);
  });

  it('are bare hours in a column that says so', () => {
    expect(lines(pasted('hour,temp °C\n22,-9\n23,-10\n0,-11\n100,-12'))).toEqual([
      '01-16 22:00 -9',
      '01-16 23:00 -10',
      '01-17 00:00 -11',
      '01-17 01:00 -12',
    ]);
  });

  it('with an offset are that moment, whatever the zone of the event', () => {
    const hours = pasted('time,temp °C\n2027-01-17T05:00:00Z,-9\n2027-01-17 01:00+02:00,-8');
    expect(hours.rows.map(({ at }) => isoUtc(at))).toEqual(['2027-01-16T23:00:00Z', '2027-01-17T05:00:00Z']);
    expect(hours.understood.times).toBe('with-offset');
  });

  it('with dates stand on their dates, in order of time', () => {
    const hours = pasted('Date;Time;Temp °C\n17.01.2027;01:00;-12\n16.01.2027;23:00;-10\n17.1.27;00:00;-11');
    expect(lines(hours)).toEqual(['01-16 23:00 -10', '01-17 00:00 -11', '01-17 01:00 -12']);
    expect(lines(pasted('2027-01-16T23:00\t-10\n2027-01-17 00:00\t-11', { temperatureUnit: 'C' }))).toEqual([
      '01-16 23:00 -10',
      '01-17 00:00 -11',
    ]);
  });

  it('show in their dates which part is the day', () => {
    expect(pasted('time,temp\n1/16/2027 11:00 PM,5\n1/17/2027 12:00 AM,4').understood.dayOrder).toBe(
      'month-first',
    );
    const days = pasted('time,temp °C\n16/01/2027 23:00,-5\n17/01/2027 00:00,-6');
    expect(days.understood.dayOrder).toBe('day-first');
    expect(lines(days)).toEqual(['01-16 23:00 -5', '01-17 00:00 -6']);
  });

  it('on dates that do not exist are handed back', () => {
    expect(skips(pasted('time,temp\n2027-02-30 10:00,5\n2027-02-28 10:00,4'))).toEqual([
      '2 time-not-readable',
    ]);
  });

  it('with the latest first are not taken for a week of nights', () => {
    expect(problem('21:00\t-12\n20:00\t-11\n19:00\t-10\n18:00\t-9')).toEqual({ code: 'times-run-backwards' });
  });
});

describe('pasted times in the night the clocks change', () => {
  it('leave out the hour that does not exist', () => {
    const hours = pasted('01:00\t1\n02:00\t2\n03:00\t3', { ...berlin, date: '2027-03-28' });
    expect(hours.rows.map(({ at }) => isoUtc(at))).toEqual(['2027-03-28T00:00:00Z', '2027-03-28T01:00:00Z']);
    expect(skips(hours)).toEqual(['2 missing-hour']);
  });

  it('keep both of the two that look alike', () => {
    const hours = pasted('01:00\t1\n02:00\t2\n02:00\t3\n03:00\t4', { ...berlin, date: '2026-10-25' });
    expect(hours.rows.map(({ at }) => isoUtc(at))).toEqual([
      '2026-10-24T23:00:00Z',
      '2026-10-25T00:00:00Z',
      '2026-10-25T01:00:00Z',
      '2026-10-25T02:00:00Z',
    ]);
    expect(hours.rows.every(({ doubledHour }) => !doubledHour)).toBe(true);
    expect(hours.skipped).toEqual([]);
  });

  it('keep the half hours of both apart', () => {
    const hours = pasted('02:00\t1\n02:30\t2\n02:00\t3\n02:30\t4\n03:00\t5', {
      ...berlin,
      date: '2026-10-25',
    });
    expect(hours.rows.map(({ at }) => isoUtc(at).slice(11, 16))).toEqual([
      '00:00',
      '00:30',
      '01:00',
      '01:30',
      '02:00',
    ]);
  });

  it('say so where only one of the two is there', () => {
    const hours = pasted('01:00\t1\n02:00\t2\n03:00\t4', { ...berlin, date: '2026-10-25' });
    expect(hours.rows.map(({ doubledHour }) => doubledHour)).toEqual([false, true, false]);
  });

  it('count real hours from a start, over the jump', () => {
    const spring = pasted('1\n2\n3', { ...berlin, date: '2027-03-28', startClock: '01:00' });
    expect(spring.rows.map(({ at }) => isoLocal(at, 'Europe/Berlin').slice(11, 16))).toEqual([
      '01:00',
      '03:00',
      '04:00',
    ]);
    const autumn = pasted('1\n2\n3', { ...berlin, date: '2026-10-25', startClock: '01:00' });
    expect(autumn.rows.map(({ at }) => isoLocal(at, 'Europe/Berlin').slice(11, 16))).toEqual([
      '01:00',
      '02:00',
      '02:00',
    ]);
  });
});
