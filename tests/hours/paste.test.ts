import { describe, expect, it } from 'vitest';
import { celsius, columnsOf, hectopascals, lines, pasted, problem, skips } from './pasting';

describe('hours pasted from a spreadsheet', () => {
  it('come with tabs, in Fahrenheit, on the 12-hour clock', () => {
    const hours = pasted('Time\tTemp (°F)\tHumidity\n6:00 PM\t14\t80%\n7:00 PM\t10.4\t84%\n8:00 PM\t5\t90%');
    expect(lines(hours)).toEqual(['01-16 18:00 -10', '01-16 19:00 -12', '01-16 20:00 -15']);
    expect(hours.rows.map((row) => row.relativeHumidity)).toEqual([0.8, 0.84, 0.9]);
    expect(columnsOf(hours)).toEqual(['time', 'temperature F header', 'humidity % cell']);
    expect(hours.understood).toMatchObject({
      separator: 'tab',
      decimal: 'point',
      turned: false,
      times: 'clock-only',
    });
  });

  it('come with semicolons and decimal commas', () => {
    const hours = pasted('Zeit;Temperatur [°C];Luftdruck hPa\n18:00;-9,5;1.013,2\n19:00;−11,0;1.012,9', {
      columns: ['time', 'temperature', 'pressure'],
    });
    expect(lines(hours)).toEqual(['01-16 18:00 -9.5', '01-16 19:00 -11']);
    expect(hectopascals(hours)).toEqual([1013.2, 1012.9]);
    expect(hours.understood).toMatchObject({ separator: 'semicolon', decimal: 'comma' });
  });

  it('come with commas, quotes, and a header in any order', () => {
    const hours = pasted(
      '"Station pressure (inHg)","dew point","Temperature","Local time"\n29.12,1,10,"18:00"\n29.10,0,8,"19:00"',
    );
    expect(lines(hours)).toEqual(['01-16 18:00 -12.22', '01-16 19:00 -13.33']);
    expect(columnsOf(hours)).toEqual([
      'pressure inHg header',
      'dew-point F assumed',
      'temperature F assumed',
      'time',
    ]);
    expect(hours.understood.pressureKind).toBe('station');
    expect(hectopascals(hours)).toEqual([986.12, 985.44]);
    expect(hours.rows[0]?.dewPoint).toBeCloseTo((1 - 32) / 1.8 + 273.15, 9);
  });

  it('come separated by blanks, as in a mail', () => {
    expect(lines(pasted('6 PM   14 °F\n7 PM   -2.2 °F\n'))).toEqual(['01-16 18:00 -10', '01-16 19:00 -19']);
    expect(lines(pasted('18:00 -12,5\n19:00 -13,5\n', { temperatureUnit: 'C' }))).toEqual([
      '01-16 18:00 -12.5',
      '01-16 19:00 -13.5',
    ]);
    expect(lines(pasted('2027-01-16 18:00 -12\n2027-01-16 19:00 -13', { temperatureUnit: 'C' }))).toEqual([
      '01-16 18:00 -12',
      '01-16 19:00 -13',
    ]);
  });

  it('come with a header whose titles have blanks in them', () => {
    expect(lines(pasted('Time  Temp °C  RH %\n18:00 -9 80\n19:00 -10 82'))).toEqual([
      '01-16 18:00 -9',
      '01-16 19:00 -10',
    ]);
    const wide = pasted('Local time   Air temperature\n18:00  -9\n19:00  -10', { temperatureUnit: 'C' });
    expect(lines(wide)).toEqual(['01-16 18:00 -9', '01-16 19:00 -10']);
  });

  it('come as one column of 24 temperatures from a given hour, in one act', () => {
    const column = Array.from({ length: 24 }, (_, i) => String(-i)).join('\n');
    const hours = pasted(column, { startClock: '18:00', temperatureUnit: 'C' });
    expect(hours.rows).toHaveLength(24);
    expect([lines(hours)[0], lines(hours)[6], lines(hours)[23]]).toEqual([
      '01-16 18:00 0',
      '01-17 00:00 -6',
      '01-17 17:00 -23',
    ]);
    expect(hours.understood.times).toBe('counted-from-start');
  });

  it('keep their hour where a cell of the column is empty', () => {
    const hours = pasted('\n-10\n\nn/a\n-13\n\n', { startClock: '18:00', temperatureUnit: 'C' });
    expect(lines(hours)).toEqual(['01-16 18:00 -10', '01-16 21:00 -13']);
    expect(skips(hours)).toEqual(['3 no-temperature', '4 no-temperature']);
  });

  it('come lying on their side', () => {
    const table = pasted('Time\t18:00\t19:00\t20:00\t21:00\nTemp °C\t-9\t-10\t-11\t-12');
    expect(lines(table)).toEqual(['01-16 18:00 -9', '01-16 19:00 -10', '01-16 20:00 -11', '01-16 21:00 -12']);
    expect(table.understood.turned).toBe(true);
    expect(celsius(pasted('-9\t-10\t-11\t-12', { startClock: '18:00', temperatureUnit: 'C' }))).toEqual([
      -9, -10, -11, -12,
    ]);
  });

  it('may have notes above the header, a line of units below it, and columns nobody needs', () => {
    const hours = pasted(
      'Lake Gorm hourly\n\nTime;Temp;Feels like;RH;Wind\n;°C;°C;%;m/s\n18:00;-9;-17;80;6\n19:00;-10;-18;82;5',
    );
    expect(lines(hours)).toEqual(['01-16 18:00 -9', '01-16 19:00 -10']);
    expect(columnsOf(hours)).toEqual([
      'time',
      'temperature C header',
      'ignored',
      'humidity % header',
      'ignored',
    ]);
    expect(skips(hours)).toEqual(['1 above-header']);
  });

  it('may have lost a quote on the way', () => {
    expect(lines(pasted('"Time";"Temp °C"\n"18:00;-9\n19:00;-10'))).toEqual([
      '01-16 18:00 -9',
      '01-16 19:00 -10',
    ]);
  });

  it('need no header where only one column can be the temperature', () => {
    expect(columnsOf(pasted('18:00\t-9\t80%\t1012 hPa\n19:00\t-10\t81%\t1011 hPa'))).toEqual([
      'time',
      'temperature F assumed',
      'humidity % cell',
      'pressure hpa cell',
    ]);
  });

  it('take 0 for a number, in every column', () => {
    const hours = pasted('time,temp,rh,dew point\n18:00,0,0,-40\n19:00,0 °C,50,0 °C');
    expect(celsius(hours)).toEqual([-17.78, 0]);
    expect(hours.rows.map((row) => row.relativeHumidity)).toEqual([0, 0.5]);
    expect(hours.rows[1]?.dewPoint).toBe(273.15);
  });

  it('let a unit in the cell win over the person’s own', () => {
    expect(celsius(pasted('18:00\t14F\n19:00\t-10 C', { temperatureUnit: 'C' }))).toEqual([-10, -10]);
  });

  it('know bare pressures by their size where the own unit cannot be', () => {
    const hours = pasted('time,temp,pressure\n18:00,-9,1013.2\n19:00,-10,1012.8');
    expect(hectopascals(hours)).toEqual([1013.2, 1012.8]);
    expect(columnsOf(hours)[2]).toBe('pressure hPa size');
    expect(hectopascals(pasted('time,temp,pressure\n18:00,-9,29.92'))).toEqual([1013.21]);
  });

  it('read humidity as percent or as a share', () => {
    const shares = pasted('time;temp;humidity\n18:00;-9;0,85\n19:00;-10;1');
    expect(shares.rows.map((row) => row.relativeHumidity)).toEqual([0.85, 1]);
    expect(columnsOf(shares)[2]).toBe('humidity ratio size');
  });

  it('say which kind of pressure the header names, and leave it open where it names none', () => {
    const kind = (title: string) => pasted(`time,temp,${title}\n18:00,-9,1013`).understood.pressureKind;
    expect(
      ['QNH', 'Altimeter (hPa)', 'MSLP', 'Sea level pressure', 'Station pressure', 'Barometer'].map(kind),
    ).toEqual(['altimeter', 'altimeter', 'sea-level', 'sea-level', 'station', null]);
  });
});

describe('lines that give no hour', () => {
  it('are handed back, each with its reason', () => {
    const hours = pasted(
      [
        'time,temp',
        '18:00,-9',
        '19:00,',
        '20:00,cold',
        '21:00,-999',
        'later,-12',
        ',-13',
        '22:00,-14',
        '22:00,-15',
        '25:00,-16',
        '',
      ].join('\n'),
      { temperatureUnit: 'C' },
    );
    expect(lines(hours)).toEqual(['01-16 18:00 -9', '01-16 22:00 -14']);
    expect(skips(hours)).toEqual([
      '3 no-temperature',
      '4 temperature-not-a-number',
      '5 temperature-out-of-range',
      '6 time-not-readable',
      '7 no-time',
      '9 same-time-as-before',
      '10 time-not-readable',
    ]);
    expect(hours.skipped[2]).toEqual({ line: 5, text: '21:00 -999', reason: 'temperature-out-of-range' });
  });

  it('cost a cell only where the temperature is good', () => {
    const hours = pasted(
      'time,temp °C,rh,dew point °C,pressure hPa\n18:00,-9,180,-5,10\n19:00,-10,wet,-200,high\n20:00,-11,80,-14,986',
    );
    expect(celsius(hours)).toEqual([-9, -10, -11]);
    expect(hours.dropped.map(({ line, reason }) => `${line} ${reason}`)).toEqual([
      '2 dew-point-above-temperature',
      '2 humidity-out-of-range',
      '2 pressure-out-of-range',
      '3 dew-point-out-of-range',
      '3 humidity-not-a-number',
      '3 pressure-not-a-number',
    ]);
    expect(
      hours.rows.map((row) => [row.relativeHumidity, row.dewPoint === null, row.pressure === null]),
    ).toEqual([
      [null, true, true],
      [null, true, true],
      [0.8, false, false],
    ]);
  });

  it('are all named where nothing is left', () => {
    expect(problem('time,temp\n18:00,\n19:00,x')).toEqual({
      code: 'no-hours',
      skipped: [
        { line: 2, text: '18:00', reason: 'no-temperature' },
        { line: 3, text: '19:00 x', reason: 'temperature-not-a-number' },
      ],
    });
  });
});

describe('what cannot be read at all', () => {
  it('says why', () => {
    expect(problem(' \n\t\n')).toEqual({ code: 'empty' });
    expect(problem('x'.repeat(100_001))).toEqual({ code: 'too-long', limit: 100_000 });
    expect(problem('-1\n'.repeat(1001))).toEqual({ code: 'too-many-lines', limit: 1000 });
    expect(problem(`${'1;'.repeat(201)}\n`.repeat(3))).toEqual({ code: 'too-many-columns', limit: 200 });
    expect(problem('18:00\n19:00')).toEqual({ code: 'no-temperature-column' });
    expect(problem('We race at six.')).toEqual({ code: 'no-temperature-column' });
    expect(problem('-1', { zone: 'Lake/Gorm' })).toEqual({ code: 'unknown-zone', zone: 'Lake/Gorm' });
    expect(problem('-1', { date: '16.1.2027' })).toEqual({ code: 'not-a-date', text: '16.1.2027' });
    expect(problem('-1', { startClock: 'six' })).toEqual({ code: 'not-a-clock', text: 'six' });
  });

  it('is a header that says one unit and a cell that says another', () => {
    expect(problem('time,temp °F\n18:00,-9\n19:00,-10 °C')).toEqual({
      code: 'unit-conflict',
      column: 1,
      header: 'F',
      cell: 'c',
    });
  });
});
