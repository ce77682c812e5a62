import { parse } from 'papaparse';
import { describe, expect, it } from 'vitest';
import { hangingIdleSteps } from '@/lib/carb/hanging-idle';
import { expectOk } from '@/lib/result/result';
import { jetCardCsv } from '@/lib/share/jet-card-csv';
import type { GpxProblem } from '@/lib/trail/gpx';
import { bigPilotCost } from '@/lib/trail/pilot-cost';
import { planRide } from '@/lib/trail/ride-plan';
import { type StopOption, stopOptions } from '@/lib/trail/ride-stops';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { formatEighths } from '@/lib/units/format';
import { metre, ratio } from '@/lib/units/quantity';
import { gpxProblemSentence } from '@/lib/words/gpx-problems';
import {
  CARD_SIGNS,
  cardCellSentence,
  cardLegend,
  cardMainText,
  cardRounding,
  cardScrewText,
} from '@/lib/words/jet-card';
import { rideCall, stopSentences } from '@/lib/words/ride';
import {
  bigPilotSentence,
  hangingIdleSentence,
  pilotSentence,
  screwWaySentence,
  turnsText,
} from '@/lib/words/screw';
import { jetCard } from '@/tests/support/jet-card';
import { airOf } from '../support/race-machine';
import { rideOf, rideRequest } from '../support/rides';
import { AIR_SCREW_PILOT, SPRING_PILOT, trailMachine } from '../support/trail-machine';

const plain = (text: string) => text.replaceAll('\u00a0', ' ');
const machine = trailMachine({ baselineAir: airOf(-6, 930, 0.8) });

describe('turns of a screw', () => {
  it('are eighths', () => {
    expect([0, 0.125, 0.75, 1, 1.375, 2.25].map((turns) => formatEighths(turns))).toEqual([
      '0',
      '⅛',
      '¾',
      '1',
      '1⅜',
      '2¼',
    ]);
    expect(formatEighths(-0.5)).toBe('−½');
  });

  it('are rounded to the richer side: a fuel screw out, an air screw in', () => {
    expect(turnsText(1.3, SPRING_PILOT)).toBe('1⅜');
    expect(turnsText(1.3, AIR_SCREW_PILOT)).toBe('1¼');
    expect(turnsText(1.25, SPRING_PILOT)).toBe('1¼');
  });

  it('are never rounded out of the allowed range', () => {
    expect(turnsText(2.28, { ...SPRING_PILOT, mostTurns: 2.3 })).toBe('2¼');
    expect(turnsText(0.52, { ...AIR_SCREW_PILOT, leastTurns: 0.51 })).toBe('⅝');
  });

  it('say which way is richer for each kind of screw', () => {
    expect(screwWaySentence(SPRING_PILOT)).toContain('out is richer');
    expect(screwWaySentence(AIR_SCREW_PILOT)).toContain('in is richer');
  });

  it('are tried by eighths on an idle that hangs: a leak first, then the stop, the screw, a bigger pilot last', () => {
    const steps = hangingIdleSteps({ ...AIR_SCREW_PILOT, turns: 1.5 });
    const said = steps.map(hangingIdleSentence);
    const place = (words: RegExp) => said.findIndex((sentence) => words.test(sentence));
    const order = [
      /air leak or a worn crank seal/,
      /lower the idle/,
      /an eighth of a turn in at a time/,
      /bigger pilot last/,
    ].map(place);
    expect(order).not.toContain(-1);
    expect(order[0]).toBe(0);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
  });

  it('end, and then it is the next pilot, or none is left', () => {
    const advice = { jet: 47.5, turns: 1, turnsWanted: 2.4, logLeft: 0 } as const;
    expect(pilotSentence({ ...advice, act: 'change-jet' }, SPRING_PILOT)).toBe(
      'The screw’s range ends: put in pilot 47.5, fuel screw 1 turn out.',
    );
    expect(plain(pilotSentence({ ...advice, act: 'none-left', logLeft: -0.04 }, SPRING_PILOT))).toContain(
      'still lacks 4 % fuel. Borrow the next size up',
    );
  });

  it('cost what a pilot too big costs', () => {
    expect(plain(bigPilotSentence(bigPilotCost(SPRING_PILOT, 0, 2), SPRING_PILOT))).toBe(
      'Pilot 47.5 where the right one would do: with the screw left alone it burns 6.0 % more fuel from idle to a quarter throttle and gives away 0.7 % of the power there; with the screw at its lean end it still burns 3.6 % more.',
    );
  });
});

describe('a ride in words', () => {
  const voice = { zone: 'UTC', units: METRIC_UNITS };
  const request = rideRequest({ machine });

  it('names the one setting, the air it is safe for and what it costs', () => {
    const answer = expectOk(planRide(request));
    const [call, cost] = rideCall(answer, voice, machine.limits.risk).map(plain);
    expect(call).toBe(
      `Put in ${answer.setting.mains[0]}: one setting for the whole ride, safe for its thickest air (−15.5 °C at 08:00).`,
    );
    expect(cost).toMatch(
      /^Where the air is thinnest \(−\d+\.\d °C at \d\d:\d\d\) it is \d+\.\d % richer: that costs/,
    );
  });

  it('says first and loudly that no jet is rich enough', () => {
    const small = { ...machine, box: [{ size: 400, count: 2 }] };
    const [call, caution] = rideCall(expectOk(planRide({ ...request, machine: small })), voice, 0.05);
    expect(call).toMatch(/^No jet in the box is rich enough for this ride: borrow \d\d0\.$/);
    expect(caution).toContain('Do not hold');
  });

  it('says of each stop whether it is worth it', () => {
    const up = rideOf(['Valley', 120, 320], ['Rim', 210, 1900, 5], ['Cairn', 420, 2000], ['Hut', 600, 1900]);
    const high = { ...request, ride: up };
    const { options } = stopOptions(high, expectOk(planRide(high)), 20);
    const said = (change: Partial<StopOption>) =>
      stopSentences(
        { options: [{ ...options[0]!, ...change }], swapMinutes: 20 },
        (place) => up.stops[place]!.name,
      )[0];
    expect(said({ because: 'lean' })).toMatch(
      /^A stop for a swap of mains is called for: \d+ to Rim, then \d+\./,
    );
    expect(said({ because: 'rich', act: 'trim' })).toMatch(/^A stop for a turn of the trim is worth it/);
    const none = 'No stop for a swap or a turn would make this ride safer.';
    expect(stopSentences({ options: [], swapMinutes: 20 }, () => '')).toEqual([none]);
    // Whatever power it would save and however rich it runs without: jets are not swapped in snow for that.
    expect(said({ saved: ratio(0.05), because: null })).toBe(none);
    expect(options[0]).toMatchObject({ act: 'swap', because: 'rich' });
    expect(said({})).toBe(none);
  });
});

describe('the card in words', () => {
  const axes = {
    temperatures: [celsiusToKelvin(0), celsiusToKelvin(-30)],
    elevations: [metre(-300), metre(900)],
    relativeHumidity: ratio(0.8),
  };
  const card = expectOk(jetCard(machine, axes));
  const cells = card.rows.flat();

  it('marks what has to be borrowed, in the cell, in words and in the legend', () => {
    const borrowed = cells.find(({ mark }) => mark === 'borrow')!;
    expect(cardMainText(borrowed)).toMatch(/^\d+!$/);
    expect(cardCellSentence(borrowed)).toMatch(
      /^Not in the box: \d+ or larger; 460, the richest owned, would be lean\.$/,
    );
    expect(cardLegend(['borrow'])[0]).toMatch(/^! not in the box/);
    expect(cardLegend([])).toEqual([]);
  });

  it('says to which side it rounds', () => {
    expect(plain(cardRounding(machine))).toContain('Rounded to the rich side');
    expect(cardRounding(machine)).toContain(
      'Between two rows take the colder, between two columns the lower.',
    );
  });

  it('shows the screw, with the pilot in brackets where it is another', () => {
    const cold = card.rows[1]![1]!;
    expect(cardScrewText(cold, machine)).toMatch(/^[\d⅛¼⅜½⅝¾⅞]+( \(\d+(\.\d)?\))?!?$/);
  });

  it('is a table with one line for each cell', () => {
    const lines = jetCardCsv(card, machine, US_UNITS).split('\r\n');
    expect(lines[0]).toBe(
      '"temperature F","elevation ft","main","main mark","pilot","screw turns out","screw mark","clip groove","clip mark","in words"',
    );
    expect(lines).toHaveLength(1 + cells.length + 1);
    const [temperature, elevation, main, mark] = lines[4]!.split(',');
    expect([Number(temperature), Math.round(Number(elevation))]).toEqual([-22, 2953]);
    expect(Number(main)).toBe(Number.parseFloat(cardMainText(cells[3]!)));
    expect(mark).toBe(`"${cells[3]!.mark ?? 'in the box'}"`);
  });

  it('is the printed card as a table: the same jets, borrowed ones too, and numbers that are numbers', () => {
    expect(cells.map(({ mark }) => mark)).toContain('borrow');
    const rows = parse<Record<string, string>>(jetCardCsv(card, machine, METRIC_UNITS).trim(), {
      header: true,
    }).data;
    for (const [i, row] of rows.entries()) {
      const cell = cells[i]!;
      expect(`${row.main}${cell.mark === null ? '' : CARD_SIGNS[cell.mark]}`).toBe(cardMainText(cell));
      for (const name of ['temperature C', 'elevation m', 'main', 'pilot', 'screw turns out', 'clip groove'])
        expect(row[name], name).toMatch(/^-?\d+(\.\d+)?$/);
      expect(cardScrewText(cell, machine)).toContain(formatEighths(Number(row['screw turns out'])));
    }
  });

  it('has a column for each carburettor where their mains are staggered', () => {
    const staggered = {
      ...machine,
      carburettors: machine.carburettors.map((each, i) => ({ ...each, main: each.main - 10 * i })),
    };
    const table = jetCardCsv(expectOk(jetCard(staggered, axes)), staggered, METRIC_UNITS);
    expect(table.split('\r\n')[0]).toContain('"main 1","main 2"');
    for (const line of table.trim().split('\r\n').slice(1))
      expect(line.split(',').slice(2, 4).map(Number)).not.toContain(NaN);
  });
});

describe('a file that cannot be used', () => {
  const problems: readonly GpxProblem[] = [
    { code: 'gpx-too-large', mostBytes: 20 * 1024 * 1024 },
    { code: 'gpx-empty' },
    { code: 'gpx-has-doctype' },
    { code: 'gpx-too-deep' },
    { code: 'gpx-too-many-points', most: 200_000 },
    { code: 'gpx-not-xml' },
    { code: 'not-gpx', root: 'kml' },
    { code: 'gpx-without-track' },
  ];
  it.each(problems)('says why, and what to do: $code', (problem) => {
    expect(gpxProblemSentence(problem)).toMatch(/Export/);
  });
});
