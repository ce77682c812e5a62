import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import type { Plan, PlanHour } from '@/lib/plan/types';
import { planCsv } from '@/lib/share/plan-csv';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { at, FIRST_START, hourAt, on, planOf, runOn, swapTo, ZONE } from '@/tests/words/plan-of';

const plan = planOf([on(410, 400), on(420, 410)], { swaps: [swapTo(1, on(410, 400), on(420, 410))] });
const voice = { zone: ZONE, units: METRIC_UNITS, now: at('2027-01-16T18:15:00-06:00') };
const rowsOf = (csv: string) =>
  Papa.parse<Record<string, string>>(csv, { header: true, skipEmptyLines: true }).data;

function named(name: string): Plan {
  return { ...plan, sortedRuns: plan.sortedRuns.map((run) => ({ ...run, name })) };
}

describe('The runs as a table', () => {
  test('have a row each, with jets, clock times of the event and the act before', () => {
    const [first, second] = rowsOf(planCsv([{ name: 'Twin', plan }], voice));
    expect(first).toMatchObject({
      machine: 'Twin',
      run: 'Round 1',
      start: '2027-01-16 19:30',
      'start (UTC)': '2027-01-17T01:30:00Z',
      'jet 1': '410',
      'jet 2': '400',
      job: '',
      'temperature (C)': '-15',
      'lean in': '0',
      'of forecasts': '64',
      state: 'planned',
    });
    expect(second).toMatchObject({
      'jet 1': '420',
      job: 'Put in 420 410',
      'job from': '2027-01-16 22:05',
      'job by': '2027-01-16 22:25',
    });
  });

  test('tell temperatures in the unit their column names', () => {
    // -15 °C = 5 °F, by the definition of the Fahrenheit scale.
    expect(rowsOf(planCsv([{ name: 'Twin', plan }], { ...voice, units: US_UNITS }))[0]).toMatchObject({
      'temperature (F)': '5',
    });
  });

  test('end every line with CR LF and double the quotes (RFC 4180, section 2)', () => {
    const csv = planCsv([{ name: 'The "old", blue one', plan }], voice);
    expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(csv.endsWith('\r\n')).toBe(true);
    expect(csv).toContain('"The ""old"", blue one"');
    expect(rowsOf(csv)[0]!.machine).toBe('The "old", blue one');
  });

  test.each([
    '=HYPERLINK("http://x","y")',
    '=1\nsecond line',
    '+1',
    '-1+1',
    '@SUM(A1)',
    '\tx',
    '\0=1',
    '＝1',
  ])('give a spreadsheet no formula to run: %j', (name) => {
    const [row] = rowsOf(planCsv([{ name: 'Twin', plan: named(name) }], voice));
    expect(row!.run).toBe(`'${name}`);
  });

  test('leave numbers out where nothing is known, and keep negative ones as numbers', () => {
    const runs = [runOn(0, on(410, 400), { state: 'beyond-hours' }), runOn(1, on(420, 410))];
    const csv = planCsv([{ name: 'Twin', plan: planOf([on(410, 400), on(420, 410)], { runs }) }], voice);
    expect(rowsOf(csv)[0]).toMatchObject({ state: 'no hours', 'temperature (C)': '', 'lean in': '' });
    expect(csv).toContain(',-15,');
  });

  test('say hour by hour whose the air is, and how old it was when the table was written', () => {
    const told = (by: string, madeAt: string | null): PlanHour => ({
      ...hourAt(FIRST_START, -15),
      from: {
        temperature: { origin: 'typed', by: null },
        pressure: { origin: 'forecast', by },
        madeAt: madeAt === null ? null : at(madeAt),
      },
    });
    const lent = { ...plan, hours: [told('open-meteo', '2027-01-16T16:45:00-06:00')] };
    expect(rowsOf(planCsv([{ name: 'Twin', plan: lent }], voice))[0]).toMatchObject({
      source: 'typed; pressure from Open-Meteo',
      'age (h)': '1.5',
    });
    const typed = { ...plan, hours: [hourAt(FIRST_START, -15)] };
    expect(rowsOf(planCsv([{ name: 'Twin', plan: typed }], voice))[0]).toMatchObject({
      source: 'typed',
      'age (h)': '',
    });
  });

  test('have as many jet columns as the engine with the most carburettors', () => {
    const single = planOf([on(390)]);
    const rows = rowsOf(
      planCsv(
        [
          { name: 'Single', plan: single },
          { name: 'Twin', plan },
        ],
        voice,
      ),
    );
    expect(rows.map((row) => [row.machine, row['jet 1'], row['jet 2']])).toEqual([
      ['Single', '390', ''],
      ['Twin', '410', '400'],
      ['Twin', '420', '410'],
    ]);
  });
});
