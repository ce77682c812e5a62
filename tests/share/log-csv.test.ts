import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { LogCsvProblem } from '@/lib/contract/log-csv-problem';
import { expectOk } from '@/lib/result/result';
import { writeLogCsv } from '@/lib/share/log-csv';
import { LOG_COLUMNS, type LogRow } from '@/lib/share/log-csv-columns';
import { MOST_CSV_CHARACTERS, readLogCsv } from '@/lib/share/read-log-csv';
import { type LogRecord, logRecordSchema } from '@/lib/store/records';
import { fromCell, toCell } from '@/lib/table/cell';

const machines = [
  { id: 'm1', name: 'Red twin' },
  { id: 'm2', name: 'Single' },
];

function run(change: Partial<LogRecord> = {}): LogRecord {
  return logRecordSchema.parse({
    machineId: 'm1',
    eventId: 'e1',
    run: 'Round 3',
    at: '2027-01-16T20:30:00-06:00',
    air: { temperatureC: -12.5, pressureHpa: 968.2, elevationM: 402, relativeHumidity: 0.78 },
    setting: { mains: [410, 400, 410], trim: 2 },
    verdict: 'rich',
    sizes: 1.5,
    judgedBy: 'plugs',
    seconds: 6.42,
    speedKmh: 171.5,
    note: 'left plug darker',
    ...change,
  });
}

const rowOf = (value: LogRecord, id = 'r1'): LogRow => ({
  id,
  machine: machines.find((machine) => machine.id === value.machineId)?.name ?? '',
  value,
});

const problems = (text: string): readonly LogCsvProblem[] => {
  const read = readLogCsv(text, machines);
  return read.ok ? [] : read.reason;
};

const table = (head: string, ...lines: string[]): string => [head, ...lines].join('\r\n');
const HEAD = 'time,machine,mains,temperature_c,elevation_m';
const LINE = '2027-01-16T20:30:00-06:00,Red twin,410,-12.5,402';

describe('the run log as a table', () => {
  it('keeps what each cylinder said, in a column of its own', () => {
    const mixed = run({ verdict: 'lean', verdicts: ['right', 'lean', null], sizes: 1.5 });
    const text = writeLogCsv([rowOf(mixed), rowOf(run({ at: '2027-01-16T21:15:00-06:00' }), 'r2')]);
    expect(text).toContain(',"right/lean/none",');
    const { entries, ignored } = expectOk(readLogCsv(text, machines));
    expect(ignored).toEqual([]);
    expect(entries[0]?.value).toEqual(mixed);
    expect(entries[1]?.value.verdicts).toBeUndefined();
  });

  it('without that column reads as before; with it alone the leanest is the verdict of the run', () => {
    const line = LINE.replace(',410,', ',410/400/410,');
    const old = expectOk(readLogCsv(table(`${HEAD},verdict`, `${line},lean`), machines));
    expect(old.entries[0]?.value).toMatchObject({ verdict: 'lean', sizes: null });
    expect(old.entries[0]?.value.verdicts).toBeUndefined();
    const only = table(`${HEAD},verdict_by_cylinder`, `${line},Right/ Lean/-`, `${line},rich/rich/rich`);
    const [first, alike] = expectOk(readLogCsv(only, machines)).entries;
    expect(first?.value).toMatchObject({ verdict: 'lean', verdicts: ['right', 'lean', null] });
    expect(alike?.value.verdict).toBe('rich');
    expect(alike?.value.verdicts).toBeUndefined();
  });

  it('gives every jet back, also where all are of one size', () => {
    const alike = run({ setting: { mains: [410, 410], trim: null } });
    const [entry] = expectOk(readLogCsv(writeLogCsv([rowOf(alike)]), machines)).entries;
    expect(entry?.value.setting.mains).toEqual([410, 410]);
  });

  it('comes back as it went out', () => {
    const rows = [
      rowOf(run(), 'r1'),
      rowOf(
        run({ machineId: 'm2', verdict: 'right', sizes: 0, setting: { mains: [180], trim: null } }),
        'r2',
      ),
      rowOf(
        run({
          eventId: null,
          verdict: null,
          sizes: null,
          judgedBy: null,
          seconds: null,
          speedKmh: null,
          note: '',
          air: { temperatureC: 21, altimeterHpa: 1013.25, elevationM: 1600, dewPointC: 4 },
        }),
        'r3',
      ),
    ];
    const read = expectOk(readLogCsv(writeLogCsv(rows), machines));
    expect(read.ignored).toEqual([]);
    expect(JSON.parse(JSON.stringify(read.entries))).toEqual(rows.map(({ id, value }) => ({ id, value })));
  });

  it('keeps any text in run and note, over 300 random ones', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 60 }),
        fc.string({ unit: 'binary', maxLength: 60 }),
        (name, note) => {
          // A lone carriage return is a line end to every reader of tables, and names are trimmed.
          const value = run({ run: name.replace(/[\r\n]/g, ' ').trim(), note: note.replace(/\r/g, '') });
          const read = expectOk(readLogCsv(writeLogCsv([rowOf(value)]), machines));
          expect(read.entries[0]?.value.note).toBe(value.note);
          expect(read.entries[0]?.value.run).toBe(value.run);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('is a table by RFC 4180: line ends CR LF, quotes doubled, as many cells in every line', () => {
    const text = writeLogCsv([rowOf(run({ note: 'said "right", twice\nsecond line' }))]);
    expect(text.startsWith('\uFEFF')).toBe(true);
    expect(text.endsWith('\r\n')).toBe(true);
    expect(text).toContain('"said ""right"", twice\nsecond line"');
    const parsed = Papa.parse<string[]>(text.slice(1).trimEnd());
    expect(new Set(parsed.data.map((line) => line.length))).toEqual(new Set([LOG_COLUMNS.length]));
  });

  it('lets no text run as a formula in a spreadsheet', () => {
    // The starts named by OWASP, CSV Injection.
    for (const start of ['=', '+', '-', '@', '\t', '\r', '\0', '＝', '＋', '－', '＠']) {
      const cell = toCell(`${start}cmd|' /C calc'!A0`);
      expect(cell.startsWith("'")).toBe(true);
      expect(fromCell(cell)).toBe(`${start}cmd|' /C calc'!A0`);
    }
    const text = writeLogCsv([rowOf(run({ note: '=HYPERLINK("http://x")', run: '+1' }))]);
    expect(text).toContain("'=HYPERLINK");
    expect(text).toContain("'+1");
  });

  it('leaves numbers numbers, so that a spreadsheet can count with them', () => {
    expect(writeLogCsv([rowOf(run())])).toContain(',-12.5,');
  });

  it('takes an apostrophe off only where one was put, over random texts', () => {
    fc.assert(fc.property(fc.string(), (text) => fromCell(toCell(text)) === text));
    fc.assert(fc.property(fc.stringMatching(/^'*[=+@-][a-z]*$/), (text) => fromCell(toCell(text)) === text));
  });
});

describe('a table made by hand', () => {
  it('needs time, machine, mains and temperature, and nothing else', () => {
    const read = expectOk(readLogCsv(table(HEAD, LINE), machines));
    expect(read.entries).toHaveLength(1);
    expect(read.entries[0]).toMatchObject({
      id: null,
      value: { machineId: 'm1', verdict: null, setting: { mains: [410], trim: null } },
    });
    expect(problems('time,run\n2027-01-16T20:30:00Z,1')).toEqual([
      { code: 'columns-missing', columns: ['machine', 'mains', 'temperature_c'] },
    ]);
  });

  it('may come from a spreadsheet that writes decimal commas and semicolons', () => {
    const text = table(HEAD.replaceAll(',', ';'), '2027-01-16T20:30:00-06:00;Single;127,5;−12,5;402');
    const [entry] = expectOk(readLogCsv(text, machines)).entries;
    expect(entry?.value.setting.mains).toEqual([127.5]);
    expect(entry?.value.air.temperatureC).toBe(-12.5);
  });

  it('says which columns it left aside', () => {
    const read = expectOk(readLogCsv(table(`${HEAD},moon`, `${LINE},full`), machines));
    expect(read.ignored).toEqual(['moon']);
  });

  it.each([
    ['nothing', '', 'empty'],
    ['a head alone', HEAD, 'empty'],
    ['a quote that never closes', table(HEAD, `"${LINE}`), 'quotes-broken'],
    ['a column twice', table(`${HEAD},time`, `${LINE},x`), 'column-twice'],
    ['more cells than columns', table(HEAD, `${LINE},7`), 'too-many-cells'],
    ['a machine nobody has', table(HEAD, LINE.replace('Red twin', 'Blue')), 'unknown-machine'],
    ['words for a temperature', table(HEAD, LINE.replace('-12.5', 'cold')), 'not-a-number'],
    ['words for jets', table(HEAD, LINE.replace('410', 'big')), 'bad-value'],
    ['a time without its zone', table(HEAD, LINE.replace('-06:00', '')), 'bad-value'],
    ['a verdict nobody knows', table(`${HEAD},verdict`, `${LINE},perfect`), 'bad-value'],
    ['one id twice', table(`${HEAD},id`, `${LINE},a`, `${LINE},a`), 'id-twice'],
  ])('with %s is refused', (_, text, code) => {
    expect(problems(text).map((problem) => problem.code)).toContain(code);
  });

  it.each([
    ['a word that is no verdict', 'right/fine/right', '', 'cylinder-verdict-unknown'],
    ['more verdicts than jets', 'right/lean/right/right', '', 'cylinder-verdicts-do-not-fit'],
    ['a verdict other than the leanest', 'right/lean/right', 'right', 'cylinder-verdicts-disagree'],
  ])('with %s cylinder by cylinder is refused', (_, each, verdict, code) => {
    const line = LINE.replace(',410,', ',410/400/410,');
    const text = table(`${HEAD},verdict,verdict_by_cylinder`, `${line},${verdict},${each}`);
    expect(problems(text).map((problem) => problem.code)).toEqual([code]);
  });

  it('with a sea-level number as station pressure at 1,600 m is refused', () => {
    const text = table(`${HEAD},station_pressure_hpa`, `${LINE.replace(',402', ',1600')},1015`);
    expect(problems(text)).toEqual([
      {
        code: 'bad-value',
        line: 2,
        column: 'station_pressure_hpa',
        reason: expect.objectContaining({ code: 'sea-level-number-as-station' }),
      },
    ]);
  });

  it('asks which machine where two share a name, unless the id says', () => {
    const twins = [...machines, { id: 'm3', name: 'red twin' }];
    const read = readLogCsv(table(HEAD, LINE), twins);
    expect(read.ok ? [] : read.reason).toEqual([{ code: 'which-machine', line: 2, machine: 'Red twin' }]);
    const [entry] = expectOk(readLogCsv(table(`${HEAD},machine_id`, `${LINE},m3`), twins)).entries;
    expect(entry?.value.machineId).toBe('m3');
  });

  it('is not read where it is far too large', () => {
    expect(problems('x'.repeat(MOST_CSV_CHARACTERS + 1))).toEqual([
      { code: 'too-large', limit: MOST_CSV_CHARACTERS },
    ]);
  });

  it('names at most 20 things that are wrong', () => {
    const text = table(HEAD, ...Array.from({ length: 90 }, () => LINE.replace('-12.5', 'cold')));
    expect(problems(text)).toHaveLength(20);
  });
});
