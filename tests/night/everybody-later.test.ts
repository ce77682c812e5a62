import { describe, expect, it } from 'vitest';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { everyRun, withEverybodyLater, withEveryRunAsBefore } from '@/lib/night/everybody-later';
import { addMinutes } from '@/lib/time/instant';
import { demoRecords, BEFORE_THE_FIRST_RUN as NOW } from './night-case';

const { event } = demoRecords(NOW);
const runs = event.value.event.runs;
const club = { classes: [{ id: 'c', name: 'Open', runs: runs.slice(1) }], racers: {} };
const record = { ...event.value, club };
const startsOf = (one: typeof record | typeof event.value) =>
  everyRun(one).map((all) => all.map(({ start }) => instantFromJson(start)));

describe('everybody later', () => {
  it('moves every run to come, of the event and of its classes, and none that has begun', () => {
    // As the first run has just begun.
    const now = instantFromJson(runs[0]!.start);
    const later = startsOf(withEverybodyLater(record, { now, minutes: 20 }));
    const before = startsOf(record);
    expect(later).toEqual(before.map((all) => all.map((at) => (at > now ? addMinutes(at, 20) : at))));
    expect(later[0]?.[0]).toBe(before[0]?.[0]);
  });

  it('goes back to the times it came from', () => {
    const later = withEverybodyLater(record, { now: NOW, minutes: 30 });
    expect(withEveryRunAsBefore(later, record)).toEqual(record);
    const alone = withEverybodyLater(event.value, { now: NOW, minutes: 30 });
    expect(withEveryRunAsBefore(alone, event.value)).toEqual(event.value);
  });
});
