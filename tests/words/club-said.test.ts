import { describe, expect, it } from 'vitest';
import { airNow } from '@/lib/club/air-now';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import { addMinutes } from '@/lib/time/instant';
import { METRIC_UNITS } from '@/lib/units/choice';
import { announcement } from '@/lib/words/announcement';
import { bulkLabel, momentsOver, momentsToCome } from '@/lib/words/bulk';
import { briefingText } from '@/lib/words/club-text';
import { clubNight, racerOf } from '@/tests/club/club-cases';
import { makeBriefing } from '@/tests/support/make-briefing';
import { DUSK, runsOf } from '@/tests/support/plan-cases';

const zone = 'UTC';
const names = { racer: (id: string) => `#${id} Racer`, box: (id: string) => `Box ${id}` };
const event = {
  name: 'Lake',
  timezone: zone,
  elevationM: 400,
  runs: [{ name: 'Round 1', start: '2027-01-16T18:00:00Z', end: '2027-01-16T18:10:00Z', weight: 1 }],
  swapMinutes: 15,
  ride: false,
};
const racers = ['1', '2', '3'].map((id) => racerOf({ id }));
const late = racerOf({ id: '4', runs: runsOf({ first: 21, every: 45, count: 6 }) });
const briefing = makeBriefing([...racers, late], clubNight());

describe('what several are to have in by one moment', () => {
  const moments = momentsToCome(briefing, zone);

  it('is told together, each racer once and in the first of the moments', () => {
    expect(moments.length).toBeGreaterThan(0);
    const told = moments.flatMap((moment) => moment.told.map(({ racerId }) => racerId));
    expect(new Set(told).size).toBe(told.length);
    for (const { at, told: each } of moments)
      for (const { racerId, setting } of each) {
        const first = briefing.acts.find((act) => act.racerId === racerId);
        expect([first?.at, first?.swap.to]).toEqual([at, setting]);
      }
    expect(bulkLabel(moments[0]!)).toMatch(/^All of \d\d:\d\d are in: 3 racers$/);
  });

  it('is not offered for one racer, who has a button of his own', () => {
    expect(momentsToCome(makeBriefing([racerOf({ id: '1' })], clubNight()), zone)).toEqual([]);
  });

  it('is asked together where its time went by and nobody said anything', () => {
    const accepted = briefing.planned.map(({ racer, plan }) => ({
      ...racer,
      accepted: settingsAsGiven(plan),
    }));
    const [act] = briefing.acts;
    const now = addMinutes(act!.swap.latestStart, 5);
    const after = makeBriefing(accepted, clubNight({ now }));
    const over = momentsOver(after, zone);
    expect(over.map(({ told }) => told.length)).toEqual([3]);
    for (const { racerId, setting, since } of over[0]!.told) {
      const { question } = after.planned.find(({ racer }) => racer.id === racerId)!.standing;
      expect([setting, since]).toEqual([question?.to, question?.since]);
    }
  });
});

describe('the briefing as text', () => {
  const text = briefingText(briefing, { event, names, zone, now: DUSK });

  it('tells every swap of everybody with its time, its jets and its run, in the order of time', () => {
    const lines = text.split('\n').filter((line) => /^(by )?\d\d:\d\d #/.test(line));
    expect(lines.length).toBe(briefing.acts.length);
    const clocks = lines.map((line) => /\d\d:\d\d/.exec(line)?.[0] ?? '');
    expect(clocks).toEqual(briefing.acts.map(({ at }) => new Date(at).toISOString().slice(11, 16)));
    for (const [i, { swap }] of briefing.acts.entries()) {
      expect(lines[i]).toContain(`Round ${swap.beforeRun + 1}.`);
      for (const main of swap.to.mains) expect(lines[i]).toContain(String(main));
    }
  });

  it('says when it was made, and how to swap safely', () => {
    expect(text).toMatch(/^Lake · .*\nAs planned at .*17:00/);
    expect(text).toContain('Engine off');
  });
});

describe('an announcement', () => {
  const said = (minutes: number) => {
    const now = addMinutes(DUSK, minutes);
    const then = makeBriefing([...racers, late], clubNight({ now }));
    const air = airNow(then.planned[0]!.plan.hours, now);
    return announcement(then, { air, names, zone, now, units: METRIC_UNITS });
  };

  it('says the air, where it went since the last hour, and who is due before the next', () => {
    expect(said(120)).toMatch(
      /^It is 19:00\. −?[\d.]+\s°C, density altitude −?[\d,]+\sm\. [\d.]+\s°C (colder|warmer), density altitude [\d,]+\sm (lower|higher) than an hour ago\./,
    );
  });

  it('names everybody who is due within the hour, and says so where nobody is', () => {
    for (let minutes = 0; minutes < 480; minutes += 60) {
      const now = addMinutes(DUSK, minutes);
      const then = makeBriefing([...racers, late], clubNight({ now }));
      const due = then.acts.filter(({ at }) => at > now && at <= addMinutes(now, 60));
      const words = said(minutes);
      for (const { racerId } of due) expect(words).toContain(names.racer(racerId));
      expect(words.includes('Nobody has to swap before')).toBe(due.length === 0);
    }
  });

  it('says of air it does not know that it does not', () => {
    expect(announcement(briefing, { air: null, names, zone, now: DUSK, units: METRIC_UNITS })).toContain(
      'There are no hours for now',
    );
  });
});
