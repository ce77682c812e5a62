import { describe, expect, it } from 'vitest';
import { briefingRow } from '@/lib/club/matrix';
import {
  borrowingSentences,
  cellStateText,
  changeText,
  clubActWords,
  clubCall,
  shortfallText,
} from '@/lib/words/club';
import { clubWarnings } from '@/lib/words/club-warnings';
import { planClock } from '@/lib/words/runs';
import { boxOf, clubNight, racerOf } from '@/tests/club/club-cases';
import { makeBriefing } from '@/tests/support/make-briefing';
import { clock, machineOf, seriesOf } from '@/tests/support/plan-cases';

const POOR = machineOf({ box: boxOf([400, 410]) });
const RICH = machineOf({ box: boxOf([400, 410, 420, 430, 440, 450], 3) });
const names = { racer: (id: string) => `Racer ${id}`, box: (id: string) => `Racer ${id}` };
const ZONE = 'UTC';
const jets = (...mains: number[]) => ({ mains, trim: null });

const club = (...racers: Parameters<typeof racerOf>[0][]) => makeBriefing(racers.map(racerOf), clubNight());

describe('the club in words', () => {
  it('tells a change jet by jet, and a turn of the knob as one', () => {
    expect(changeText(jets(400, 390, 400), jets(410, 400, 410))).toBe('400 390 400 → 410 400 410');
    expect(changeText(jets(400, 400), jets(410, 410))).toBe('400 → 410');
    expect(changeText({ mains: [400], trim: 3 }, { mains: [400], trim: 4 })).toBe('trim 3 → trim 4');
    expect(changeText({ mains: [400], trim: 3 }, { mains: [410], trim: 4 })).toBe(
      '400, trim 3 → 410, trim 4',
    );
  });

  it('tells each act with its time on the clock of the event', () => {
    const briefing = club({ id: '7', machine: RICH });
    const { plan } = briefing.planned[0]!;
    const words = briefing.acts.map((act) => clubActWords(act, plan, planClock(plan, ZONE)));
    expect(words.length).toBeGreaterThan(0);
    for (const [i, { time, change, where, why, about }] of words.entries()) {
      const { swap, beforeFirst } = briefing.acts[i]!;
      expect(time).toMatch(beforeFirst ? /^by \d\d:\d\d$/ : /^\d\d:\d\d$/);
      expect(change).toBe(`${swap.from.mains[0]} → ${swap.to.mains[0]}`);
      expect(where).toContain('Round');
      expect(why).toMatch(/\.$/);
      // "by 18:45" stands beside it, and is not said again.
      expect(about.includes(time)).toBe(!beforeFirst);
      expect(about.endsWith(why)).toBe(true);
    }
  });

  it('opens with who is in danger, then says how much there is to do and when it begins', () => {
    const briefing = club({ id: '1', machine: RICH }, { id: '2', machine: POOR });
    const {
      loud: [danger],
      calm,
    } = clubCall(briefing, names, ZONE);
    expect(danger).toMatch(/^Racer 2: Do not race Rounds \d.* on \d{3}: risk of lean/);
    expect(calm).toMatch(/^\d jobs? for 2 racers; the first (at|by) \d\d:\d\d for Racer \d\.$/);
  });

  it('names many in danger in one sentence, and those who have no plan', () => {
    const poor = ['1', '2', '3', '4'].map((id) => ({ id, machine: POOR }));
    const { loud } = clubCall(club(...poor, { id: '5', machine: machineOf({ box: [] }) }), names, ZONE);
    expect(loud[0]).toBe(
      'Not to be raced as it is, or not known what is in: Racer 1, Racer 2, Racer 3 and Racer 4.',
    );
    expect(loud[1]).toBe('No plan for Racer 5.');
  });

  it('says that there is nothing to do where there is nothing', () => {
    const steady = makeBriefing([racerOf({ id: '1' })], clubNight({ series: seriesOf(Array(17).fill(-6)) }));
    expect(clubCall(steady, names, ZONE)).toEqual({
      loud: [],
      calm: 'Nothing to swap for 1 racer.',
    });
  });

  it('says what is lacking, for which runs, who can lend it and whether that is enough', () => {
    const briefing = club({ id: '1', machine: RICH }, { id: '2', machine: POOR });
    const [borrowing] = briefing.borrowings;
    const plan = briefing.planned[1]!.plan;
    const [lack, offer, left] = borrowingSentences(borrowing!, plan, names);
    expect(lack).toMatch(/^No jet that will do for Rounds \d.*: needs 4\d0\.$/);
    expect(offer).toMatch(/^Racer 1 can spare 1 × 4\d0/);
    expect(left).toBe('Planned with them, none of these runs is outside its limits.');
  });

  it('does not send anybody out where nobody can lend', () => {
    const briefing = club({ id: '2', machine: POOR });
    const sentences = borrowingSentences(briefing.borrowings[0]!, briefing.planned[0]!.plan, names);
    expect(sentences[1]).toBe('Nobody here has one to spare: ask outside the club, or sit these runs out.');
  });

  it('says lean with its count in the cell, not by colour alone', () => {
    const [poor] = club({ id: '2', machine: POOR }).planned;
    const cells = briefingRow(poor!, [clock(16), clock(23)]).cells;
    expect(cellStateText(cells[0]!)).toBe('');
    expect(cellStateText(cells[1]!)).toMatch(/^lean, risk \d+ in 64$/);
  });

  it('counts what a shared box is short of', () => {
    expect(
      shortfallText(
        new Map([
          [420, 3],
          [430, 1],
        ]),
      ),
    ).toBe('420 (3 short) and 430 (1 short)');
  });
});

describe('cautions of a club', () => {
  const voice = { zone: ZONE, units: { temperature: 'C', pressure: 'hPa', elevation: 'm' } } as const;

  it('are said once where they hold for everybody, and with names where they do not', () => {
    const night = clubNight({ series: seriesOf([-4, -6, -8, -10, -12, -13], { pressureFrom: 'standard' }) });
    const briefing = makeBriefing(
      [racerOf({ id: '1' }), racerOf({ id: '2', machine: machineOf({ carburettors: [{ main: 405 }] }) })],
      night,
    );
    const warnings = clubWarnings(briefing, names, voice);
    expect(warnings.filter((warning) => warning.startsWith('No pressure was given'))).toHaveLength(1);
    expect(warnings.filter((warning) => warning.startsWith('Racer 2: '))).toEqual([
      expect.stringContaining('405'),
    ]);
  });
});
