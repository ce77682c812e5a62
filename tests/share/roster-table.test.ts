import { describe, expect, it } from 'vitest';
import { readSizes } from '@/lib/carb/box-text';
import { type RosterTable, readRosterTable } from '@/lib/share/roster-table';
import type { UnitChoice } from '@/lib/units/choice';
import { rosterLineSentence, rosterTableSentence } from '@/lib/words/roster';
import { hostileTexts } from '@/tests/hours/hostile-text';

const UNITS: UnitChoice = { temperature: 'F', pressure: 'inHg', elevation: 'ft' };
const CONTEXT = { units: UNITS, elevationM: 402 };

function read(text: string): RosterTable {
  const table = readRosterTable(text, CONTEXT);
  if (!table.ok) throw new Error(rosterTableSentence(table.reason));
  return table.value;
}

const problems = (text: string) => read(text).bad.map(({ line, problem }) => [line, problem.code]);

describe('a pasted roster', () => {
  it('reads what a spreadsheet puts on the clipboard', () => {
    const table = read(
      'Racer\tClass\tMains\tBox\tTemp (°C)\tElevation\n' +
        'Ilsa Vorn\tOpen\t410/400/410\t400x3 410x3 420x3\t-10.5\t1320 ft\n' +
        'Juri Tavel\tStock\t162.5x2\t160x2 162.5x2 165x2\t14 F\t\n',
    );
    expect(table.bad).toEqual([]);
    const [ilsa, juri] = table.rows;
    expect(ilsa).toMatchObject({
      line: 2,
      name: 'Ilsa Vorn',
      className: 'Open',
      machine: {
        name: 'Ilsa Vorn',
        carburettors: [{ main: 410 }, { main: 400 }, { main: 410 }],
        box: [
          { size: 400, count: 3 },
          { size: 410, count: 3 },
          { size: 420, count: 3 },
        ],
        jetMarking: 'flow',
      },
    });
    expect(ilsa?.machine.baseline.air.temperatureC).toBeCloseTo(-10.5, 9);
    // 1 ft = 0.3048 m (exact, by definition).
    expect(ilsa?.machine.baseline.air.elevationM).toBeCloseTo(1320 * 0.3048, 9);
    // 14 °F = -10 °C (exact).
    expect(juri?.machine.baseline.air.temperatureC).toBeCloseTo(-10, 9);
    expect(juri?.machine.carburettors).toEqual([{ main: 162.5 }, { main: 162.5 }]);
  });

  it('takes the elevation of the event where a line gives neither elevation nor pressure, and says so', () => {
    const table = read('A;410;400x1 410;18\nB;410;400 410;18;900 ft');
    expect(table.elevationAssumed).toEqual([1]);
    expect(table.rows[0]?.machine.baseline.air).toMatchObject({ elevationM: 402 });
  });

  it('takes station pressure by its own name, so that no other kind is mistaken for it', () => {
    const table = read('name,mains,box,temperature,station pressure\nA,410,400 410,18,29.1');
    // 1 inHg = 33.8639 hPa (NIST SP 811, appendix B.9, conventional inch of mercury: 3.386389 kPa).
    expect(table.rows[0]?.machine.baseline.air.pressureHpa).toBeCloseTo(29.1 * 33.86389, 3);
    expect(read('name,mains,box,temperature,pressure\nA,410,400 410,18,29.1').ignored).toEqual(['pressure']);
  });

  it('needs no heads where the columns stand in the usual order', () => {
    const [row] = read('Ilsa, 410, 400x3 410x3, -7.8 C, 1319 ft, Open').rows;
    expect(row).toMatchObject({ line: 1, name: 'Ilsa', className: 'Open' });
  });

  it('leaves out lines it does not understand, says which and why, and reads the rest', () => {
    const text = [
      'name;mains;box;temperature',
      'A;410;400x3 410x3;18',
      ';410;400;18',
      'B;fat;400;18',
      'C;410;400y3;18',
      'D;410;400x3;cold',
      'E;410;400x3;300',
      'F;410;400x3;18;left over',
    ].join('\n');
    expect(problems(text)).toEqual([
      [3, 'name-missing'],
      [4, 'mains'],
      [5, 'box'],
      [6, 'temperature'],
      [7, 'machine'],
      [8, 'too-many-cells'],
    ]);
    expect(read(text).rows.map(({ name }) => name)).toEqual(['A']);
    for (const { problem } of read(text).bad)
      expect(rosterLineSentence(problem, { zone: 'UTC', units: UNITS })).toMatch(/\w{3,}.*\w{3,}/);
  });

  it('refuses more than six carburettors and catches size and count swapped', () => {
    expect(problems('A;410x7;410x7;18')).toEqual([[1, 'machine']]);
    expect(problems('A;3x410;410x3;18')).toEqual([[1, 'mains']]);
  });

  it('says which column is missing or there twice', () => {
    expect(readRosterTable('name;mains;box\nA;410;400', CONTEXT)).toEqual({
      ok: false,
      reason: { code: 'columns-missing', columns: ['temperature'] },
    });
    expect(readRosterTable('name;rider;mains;box;temp\nA;B;410;400;18', CONTEXT)).toEqual({
      ok: false,
      reason: { code: 'column-twice', column: 'name' },
    });
    expect(readRosterTable('', CONTEXT)).toEqual({ ok: false, reason: { code: 'empty' } });
    expect(readRosterTable('name;mains;box;temp', CONTEXT)).toEqual({ ok: false, reason: { code: 'empty' } });
    expect(readRosterTable('"A;410;400;18', CONTEXT)).toEqual({
      ok: false,
      reason: { code: 'quotes-broken' },
    });
  });

  it('takes off the apostrophe that keeps a spreadsheet from running a name', () => {
    expect(read("'=Sum;410;400 410;18").rows[0]?.name).toBe('=Sum');
  });

  it('gives a reason or a table for any text, and never throws', () => {
    for (const text of hostileTexts(2000, 41)) {
      const table = readRosterTable(text, CONTEXT);
      expect(table.ok ? table.value.rows.length + table.value.bad.length : 1).toBeGreaterThan(0);
    }
  });
});

describe('mains in one cell', () => {
  it('keeps their order from the first carburettor to the last', () => {
    expect(readSizes('410/400/410')).toEqual({ ok: true, value: [410, 400, 410] });
    expect(readSizes('410 400 410')).toEqual({ ok: true, value: [410, 400, 410] });
    expect(readSizes('410 x 3')).toEqual({ ok: true, value: [410, 410, 410] });
    expect(readSizes('162,5/160')).toEqual({ ok: true, value: [162.5, 160] });
    expect(readSizes('')).toEqual({ ok: false, reason: { code: 'empty' } });
  });
});
