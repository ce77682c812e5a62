import { describe, expect, it } from 'vitest';
import { boardPostSchema } from '@/lib/contract/board';
import { eventSchema } from '@/lib/contract/event';
import { machineSchema } from '@/lib/contract/machine';
import { bibText, isSeen, nameOrNone, nameText } from '@/lib/contract/name-text';
import { makePlan } from '@/lib/plan/make-plan';
import { expectOk } from '@/lib/result/result';
import { readRosterTable } from '@/lib/share/roster-table';
import { clubSchema } from '@/lib/store/records';
import { METRIC_UNITS } from '@/lib/units/choice';
import { isolated } from '@/lib/words/isolated';
import { runName } from '@/lib/words/runs';
import { requestOf, runsOf } from '@/tests/support/plan-cases';

/** Unicode's own fillers, marks and controls; from DerivedCoreProperties.txt (Default_Ignorable_Code_Point) and UAX #9. */
const UNSEEN = [
  '\u200B', // zero width space
  '\u2060\u2060', // word joiner
  '\u202E', // right-to-left override
  '\u2066\u2069', // an isolate around nothing
  '\u00AD', // soft hyphen
  '\u3164', // Hangul filler
  '\u115F\u1160', // Hangul jamo fillers
  '\uFFA0', // halfwidth Hangul filler
  '\u2800', // empty Braille pattern
  '\u{E0041}\u{E007F}', // tags
  '\uFE0F', // variation selector
  '\u0301', // an accent on nothing
  ' \u00A0\u2003 ', // blanks
  '\u0000\u0007', // controls
];

const event = {
  name: 'Lake',
  timezone: 'UTC',
  elevationM: 0,
  runs: [{ name: 'Round 1', start: '2027-01-17T00:00:00Z', end: '2027-01-17T00:10:00Z' }],
};
const machine = {
  name: 'Twin',
  carburettors: [{ main: 410 }],
  box: [],
  baseline: { air: { temperatureC: 0, elevationM: 0 } },
};

describe('a name in which nothing can be seen', () => {
  it.each(UNSEEN)('is refused wherever names enter: %j', (name) => {
    expect(isSeen(name)).toBe(false);
    expect(nameText.safeParse(name).success).toBe(false);
    expect(bibText.safeParse(name).success).toBe(false);
    expect(nameOrNone.parse(name)).toBe('');
    expect(eventSchema.safeParse({ ...event, name }).success).toBe(false);
    expect(eventSchema.safeParse({ ...event, runs: [{ ...event.runs[0], name }] }).success).toBe(false);
    expect(machineSchema.safeParse({ ...machine, name }).success).toBe(false);
    const board = {
      event,
      machines: [{ name, machine }],
      hours: [{ time: event.runs[0]!.start, temperatureC: 0 }],
    };
    expect(boardPostSchema.safeParse(board).success).toBe(false);
    expect(clubSchema.safeParse({ classes: [{ id: 'a', name, runs: event.runs }] }).success).toBe(false);
    const table = readRosterTable(`"${name}";410;400 410;-10`, { units: METRIC_UNITS, elevationM: 0 });
    expect(table.ok ? table.value.rows : []).toEqual([]);
  });

  it('is not one of letters, figures or signs of any script', () => {
    for (const name of ['A', '7', '#', 'é', 'e\u0301', 'שלום', '氷', 'Ñandú 2', '🏁', '⑦'])
      expect([name, isSeen(name), nameText.parse(name)]).toEqual([name, true, name]);
  });
});

describe('a name that would turn text round', () => {
  it('comes in without what turns it', () => {
    expect(nameText.parse('Round \u202E3')).toBe('Round 3');
    expect(nameText.parse('\u2067Final\u2069')).toBe('Final');
    expect(machineSchema.parse({ ...machine, name: 'A\u202Eb' }).name).toBe('Ab');
  });

  it('is held apart from its sentence where it is written from the right', () => {
    // UAX #9: FSI (U+2068) begins an isolate, PDI (U+2069) ends it.
    expect(isolated('גמר 3')).toBe('\u2068גמר 3\u2069');
    expect(isolated('نهائي')).toBe('\u2068نهائي\u2069');
    for (const plain of ['Round 3', 'Ørn', '決勝 2', 'Финал']) expect(isolated(plain)).toBe(plain);
    const runs = runsOf({ first: 18, every: 60, count: 2 }).map((run) => ({ ...run, name: 'גמר' }));
    const plan = expectOk(makePlan(requestOf({ runs })));
    expect(runName(plan, 1)).toBe('\u2068גמר\u2069');
  });
});
