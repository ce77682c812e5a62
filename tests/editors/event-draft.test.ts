import { describe, expect, it } from 'vitest';
import { eventSchema } from '@/lib/contract/event';
import { blankEventDraft, draftFromEvent } from '@/lib/fields/event/draft-from-event';
import { eventNotes } from '@/lib/fields/event/event-notes';
import { type EventDraft, emptyRun, type RunDraft } from '@/lib/fields/event/event-rows';
import { readEvent } from '@/lib/fields/event/read-event';
import { recordWithEvent } from '@/lib/night/record-with-event';
import { eventRecordSchema } from '@/lib/store/records';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';

const START = { units: US_UNITS, timezone: 'America/Chicago', date: '2027-01-16' };

function evening(change: Partial<EventDraft> = {}): EventDraft {
  return {
    ...blankEventDraft(START),
    name: 'Friday night drags',
    elevation: '1320',
    series: { first: '19:00', every: '25', count: '8', lasting: '6', called: 'Round' },
    ...change,
  };
}

const row = (start: string, end: string, more: Partial<RunDraft> = {}): RunDraft => ({
  ...emptyRun(`new-${start}`, ''),
  start,
  end,
  ...more,
});

const listed = (runs: readonly RunDraft[], change: Partial<EventDraft> = {}): EventDraft =>
  evening({ how: 'list', runs, ...change });

const timesOf = (draft: EventDraft): readonly (readonly [string, string])[] | undefined =>
  readEvent(draft).value?.event.runs.map(({ start, end }) => [start, end] as const);

describe('an event being typed', () => {
  it('makes runs from "first at, every, how many, lasting"', () => {
    const { value, errors } = readEvent(evening());
    expect(errors).toEqual({});
    expect(value?.event.runs).toHaveLength(8);
    expect(value?.event.runs[0]).toEqual({
      name: 'Round 1',
      start: '2027-01-16T19:00:00-06:00',
      end: '2027-01-16T19:06:00-06:00',
      weight: 1,
    });
    expect(value?.event.runs[7]?.start).toBe('2027-01-16T21:55:00-06:00');
    expect(value?.event).toMatchObject({ swapMinutes: 15, ride: false, timezone: 'America/Chicago' });
    // 1320 ft = 402.336 m exactly.
    expect(value?.event.elevationM).toBe(402.336);
  });

  it('counts a series across midnight', () => {
    const { value } = readEvent(
      evening({ series: { first: '11:30 pm', every: '45', count: '3', lasting: '20', called: 'Heat' } }),
    );
    expect(value?.event.runs.map(({ start }) => start)).toEqual([
      '2027-01-16T23:30:00-06:00',
      '2027-01-17T00:15:00-06:00',
      '2027-01-17T01:00:00-06:00',
    ]);
  });

  it('names each missing field once, in the order of the form', () => {
    const { value, errors } = readEvent(blankEventDraft(START));
    expect(value).toBeNull();
    expect(Object.keys(errors)).toEqual([
      'name',
      'elevation',
      'series.first',
      'series.count',
      'series.lasting',
      'series.every',
    ]);
  });

  it('takes a single run without asking for the time between runs', () => {
    const series = { first: '20:00', every: '', count: '1', lasting: '90', called: 'Leg' };
    expect(timesOf(evening({ series }))).toEqual([
      ['2027-01-16T20:00:00-06:00', '2027-01-16T21:30:00-06:00'],
    ]);
  });

  it('reads a list with ends as clock times or minutes, and crosses midnight', () => {
    expect(timesOf(listed([row('22:30', '22:40'), row('23:55', '10 min'), row('0:30', '00:36')]))).toEqual([
      ['2027-01-16T22:30:00-06:00', '2027-01-16T22:40:00-06:00'],
      ['2027-01-16T23:55:00-06:00', '2027-01-17T00:05:00-06:00'],
      ['2027-01-17T00:30:00-06:00', '2027-01-17T00:36:00-06:00'],
    ]);
  });

  it('sorts runs that are out of order, and says so', () => {
    const draft = listed([row('19:00', '6'), row('20:00', '6'), row('19:30', '6', { name: 'Late entry' })]);
    expect(readEvent(draft).value?.event.runs.map(({ name }) => name)).toEqual([
      'Run 1',
      'Late entry',
      'Run 2',
    ]);
    expect(eventNotes(draft).notes[0]).toContain('not in order of time');
  });

  it('flags runs that overlap and pairs too close for a swap, and lets both stand', () => {
    const draft = listed([row('19:00', '30'), row('19:20', '30'), row('20:00', '6')]);
    const { notes } = eventNotes(draft);
    expect(notes).toHaveLength(2);
    expect(notes[0]).toBe('Run 2 starts at 19:20, before Run 1 ends at 19:30. Check both times.');
    expect(notes[1]).toBe(
      'There are fewer than 15 minutes between Run 2 and Run 3: no time to swap jets there.',
    );
    expect(readEvent(draft).errors).toEqual({});
    expect(eventNotes({ ...draft, ride: true }).notes).toHaveLength(1);
  });

  it('says what is wrong with a row beside the field of that row', () => {
    const draft = listed([row('19:00', ''), row('noon', '6'), row('20:00', '20:00'), row('25:00', '6')]);
    const { value, errors } = readEvent(draft);
    expect(value).toBeNull();
    expect(Object.keys(errors)).toEqual(['runs.0.end', 'runs.1.start', 'runs.2.end', 'runs.3.start']);
    expect(errors['runs.2.end']).toContain('ends when it starts');
    expect(readEvent(listed([])).errors).toHaveProperty('runs');
  });

  it('puts a run on the day that is chosen for it', () => {
    expect(
      timesOf(listed([row('10:00', '60'), row('10:00', '60', { day: '1' }), row('15:00', '60')])),
    ).toEqual([
      ['2027-01-16T10:00:00-06:00', '2027-01-16T11:00:00-06:00'],
      ['2027-01-17T10:00:00-06:00', '2027-01-17T11:00:00-06:00'],
      ['2027-01-17T15:00:00-06:00', '2027-01-17T16:00:00-06:00'],
    ]);
  });

  it('keeps a place by its coordinates, and asks for them where only a name was typed', () => {
    const placed = evening({ placeName: 'Lake Orvana', latitude: '47.42 N', longitude: '93,61 W' });
    expect(readEvent(placed).value?.event.place).toEqual({
      name: 'Lake Orvana',
      latitude: 47.42,
      longitude: -93.61,
    });
    expect(readEvent(evening()).value?.event.place).toBeUndefined();
    expect(Object.keys(readEvent(evening({ placeName: 'Lake Orvana' })).errors)).toEqual([
      'latitude',
      'longitude',
    ]);
    expect(readEvent({ ...placed, latitude: '147' }).errors.latitude).toContain('90° south to 90° north');
  });

  it('refuses a zone that does not exist, an impossible date and a count that is none', () => {
    expect(Object.keys(readEvent(evening({ timezone: 'Mars/Olympus' })).errors)).toEqual(['timezone']);
    expect(Object.keys(readEvent(evening({ date: '2027-02-30' })).errors)).toEqual(['date']);
    const series = { ...evening().series, count: '2.5' };
    expect(Object.keys(readEvent(evening({ series })).errors)).toEqual(['series.count']);
    expect(Object.keys(readEvent(evening({ swapMinutes: '1e309' })).errors)).toEqual(['swapMinutes']);
  });

  it('does not ask for swap minutes on a ride', () => {
    const { value, errors } = readEvent(evening({ ride: true, swapMinutes: 'later' }));
    expect(errors).toEqual({});
    expect(value?.event.ride).toBe(true);
  });
});

// United States: clocks go forward on the second Sunday of March, back on the first Sunday of November at 2:00
// (Energy Policy Act of 2005, section 110): 14 March and 7 November 2027.
describe('a night in which the clocks change', () => {
  it('counts real minutes through the night of 23 hours', () => {
    const draft = evening({
      date: '2027-03-14',
      series: { first: '1:30', every: '30', count: '3', lasting: '10', called: 'Leg' },
    });
    expect(timesOf(draft)?.map(([start]) => start)).toEqual([
      '2027-03-14T01:30:00-06:00',
      '2027-03-14T03:00:00-05:00',
      '2027-03-14T03:30:00-05:00',
    ]);
    expect(eventNotes(draft).notes).toContain('The clocks go forward from 02:00 to 03:00 on 2027-03-14.');
  });

  it('refuses a start in the hour that does not exist', () => {
    const draft = listed([row('23:30', '10'), row('2:30', '10')], { date: '2027-03-13' });
    expect(Object.keys(readEvent(draft).errors)).toEqual(['runs.1.start']);
    expect(readEvent(draft).errors['runs.1.start']).toContain('does not exist');
  });

  it('takes a clock time that shows twice by the order of the runs, or as it is told', () => {
    const runs = [row('1:10', '10'), row('1:40', '10'), row('1:15', '10')];
    const draft = listed(runs, { date: '2027-11-07' });
    // 1:15 after 1:40: the second 1:15, an hour later.
    expect(timesOf(draft)?.map(([start]) => start)).toEqual([
      '2027-11-07T01:10:00-05:00',
      '2027-11-07T01:40:00-05:00',
      '2027-11-07T01:15:00-06:00',
    ]);
    const told = listed([row('1:10', '10', { which: 'second' })], { date: '2027-11-07' });
    expect(timesOf(told)).toEqual([['2027-11-07T01:10:00-06:00', '2027-11-07T01:20:00-06:00']]);
    expect(eventNotes(draft).notes.join(' ')).toContain('the clock shows this time twice');
  });
});

describe('an event opened for editing', () => {
  const ORIGINAL = eventSchema.parse({
    name: 'Two nights',
    timezone: 'America/Chicago',
    place: { name: 'Lake Orvana', latitude: 47.42, longitude: -93.61 },
    elevationM: 402,
    runs: [
      {
        name: 'A',
        start: '2027-11-06T23:30:00-05:00',
        end: '2027-11-06T23:50:00-05:00',
        typicalSeconds: 6.4,
      },
      {
        name: 'B',
        start: '2027-11-07T01:10:00-06:00',
        end: '2027-11-07T01:30:00-06:00',
        weight: 2,
        typicalSeconds: 6.4,
      },
      {
        name: 'C',
        start: '2027-11-07T19:00:00-06:00',
        end: '2027-11-07T19:20:00-06:00',
        typicalSeconds: 6.4,
      },
    ],
    swapMinutes: 12,
  });

  it('reads back as the same event, also where the clocks went back in between', () => {
    for (const [units, hours] of [
      [US_UNITS, '12'],
      [METRIC_UNITS, '24'],
    ] as const) {
      const draft = draftFromEvent(ORIGINAL, { units, date: '2020-01-01', hours });
      // On the clock that the person reads elsewhere on the page.
      expect(draft.runs.map(({ start }) => / [ap]m$/.test(start.replaceAll('\u00a0', ' ')))).toEqual(
        Array(3).fill(hours === '12'),
      );
      const { value, errors } = readEvent(draft);
      expect(errors).toEqual({});
      expect(value?.event).toMatchObject({ ...ORIGINAL, elevationM: expect.closeTo(402, 2) });
      expect(value?.from).toEqual([0, 1, 2]);
    }
  });

  it('keeps typical times that differ from run to run', () => {
    const runs = ORIGINAL.runs.map((run, i) => ({ ...run, typicalSeconds: 6 + i }));
    const { value } = readEvent(
      draftFromEvent({ ...ORIGINAL, runs }, { units: US_UNITS, date: '2020-01-01', hours: '24' }),
    );
    expect(value?.event.runs.map(({ typicalSeconds }) => typicalSeconds)).toEqual([6, 7, 8]);
  });

  it('lets what was made and accepted move along with its run', () => {
    const setting = (main: number) => ({ mains: [main], trim: null });
    const record = eventRecordSchema.parse({
      event: ORIGINAL,
      machineIds: ['m'],
      typed: null,
      made: {
        m: [
          { run: 0, setting: setting(400) },
          { run: 1, setting: setting(410) },
        ],
      },
      accepted: { m: [setting(400), setting(410), setting(420)] },
    });
    const runs = ORIGINAL.runs.toReversed();
    const moved = recordWithEvent(record, { event: { ...ORIGINAL, runs }, from: [2, 1, 0] });
    expect(moved.made.m).toEqual([
      { run: 2, setting: setting(400) },
      { run: 1, setting: setting(410) },
    ]);
    expect(moved.accepted.m).toEqual([setting(420), setting(410), setting(400)]);
    const fewer = recordWithEvent(record, { event: { ...ORIGINAL, runs: runs.slice(0, 2) }, from: [2, 1] });
    expect(fewer.made.m).toEqual([{ run: 1, setting: setting(410) }]);
    expect(fewer.accepted.m).toEqual([setting(420), setting(410)]);
    const added = recordWithEvent(record, { event: ORIGINAL, from: [0, null, 2] });
    expect(added.accepted).toEqual({});
  });
});
