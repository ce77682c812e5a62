import { describe, expect, it } from 'vitest';
import { hardwareShift } from '@/lib/carb/hardware';
import { evidenceOfChart, evidenceOfLog } from '@/lib/carb/jet-evidence';
import { learnResponse } from '@/lib/carb/learn';
import { expectOk } from '@/lib/result/result';
import { US_UNITS } from '@/lib/units/choice';
import { horsepowerToWatt } from '@/lib/units/convert';
import { kelvinDifference, ratio } from '@/lib/units/quantity';
import { backupProblemSentence } from '@/lib/words/backup';
import {
  hardwareProblemSentence,
  hardwareShiftSentence,
  hardwareText,
  intakeCostSentence,
} from '@/lib/words/hardware';
import {
  informationSentence,
  leftOutSentence,
  levelSentence,
  outlierSentence,
  scatterSentence,
} from '@/lib/words/learning';
import { airOf, raceMachine } from '../support/race-machine';

const machine = raceMachine();

describe('what learning says in words', () => {
  it('refuses to pretend: two cold runs at one track tell nothing of pressure', () => {
    const entry = (id: string, celsius: number) => ({
      id,
      air: airOf(celsius, 990, 0.6),
      setting: { mains: [420, 420], trim: null },
      verdict: 'right' as const,
      sizes: 0,
      judgedBy: 'plugs' as const,
    });
    const learned = learnResponse(machine, evidenceOfLog(machine, [entry('a', -20), entry('b', -22)]));
    const said = informationSentence('pressure', learned.pressure);
    expect(said).toContain('stays near what is assumed');
    expect(said).toContain('all near one pressure');
    expect(said).toContain('higher or lower track');
  });

  it('says so where high tracks were always cold ones', () => {
    const cells = [0, 1, 2, 3].map((i) => ({
      id: `${i}`,
      air: airOf(20 - 12 * i, 1000 - 60 * i, 0.4),
      main: 410,
    }));
    const learned = learnResponse(machine, evidenceOfChart(machine, cells));
    expect([learned.pressure.why, learned.temperature.why]).toContain('moves-together');
    const name = learned.pressure.why === 'moves-together' ? 'pressure' : 'temperature';
    expect(informationSentence(name, learned[name])).toContain('cannot be told apart');
  });

  it('names what stands apart, what was left out, and how the baseline itself stands', () => {
    expect(outlierSentence(['Round 3', 'Round 5'])).toMatch(/^Round 3 and Round 5 stand far apart/);
    expect(leftOutSentence([{ why: 'no-verdict' }, { why: 'no-verdict' }])).toBe(
      'Not counted: 2 runs without a verdict.',
    );
    expect(leftOutSentence([])).toBe('');
    const step = Math.log(1.025);
    expect(levelSentence({ log: step, sd: step / 4 }, step)).toContain('1.0 sizes lean');
    expect(levelSentence({ log: -step, sd: step / 4 }, step)).toContain('1.0 sizes rich');
    expect(levelSentence({ log: 0, sd: step / 4 }, step)).toContain('is right');
  });
});

describe('what is said of scatter', () => {
  const entries = (count: number) =>
    learnResponse(
      machine,
      evidenceOfLog(
        machine,
        Array.from({ length: count }, (_, i) => ({
          id: `${i}`,
          air: airOf(-20 + i, 990, 0.6),
          setting: { mains: [420, 420], trim: null },
          verdict: 'right' as const,
          sizes: 0,
          judgedBy: 'plugs' as const,
        })),
      ),
    );

  it.each([0, 1, 2, 5])('with %i entries nothing: so few cannot scatter', (count) => {
    expect(scatterSentence(entries(count))).toBe('');
  });

  it('from six on, one level taken off, whether they scatter as they should', () => {
    expect(scatterSentence(entries(6))).toContain('scatter about as such verdicts should');
    expect(scatterSentence({ ...entries(6), scatter: 2 })).toContain('2.0 times as much');
  });

  it('every group has a level of its own, so a chart and a log need seven', () => {
    const six = entries(6).entries;
    const mixed = six.map((entry, i) => ({ ...entry, group: i < 3 ? ('chart' as const) : entry.group }));
    expect(scatterSentence({ scatter: 1, entries: mixed })).toBe('');
    expect(scatterSentence({ scatter: 1, entries: [...mixed, mixed[0]!] })).not.toBe('');
  });
});

describe('what hardware says in words', () => {
  it('a removed airbox: two sizes, its doubt and that no source gives it', () => {
    const shift = expectOk(hardwareShift({ kind: 'airbox-off', amount: null }));
    expect(hardwareShiftSentence(shift)).toBe(
      'The main moves +2.0 sizes (+5.1\u00a0%), give or take 1.5 sizes; common practice, no source.',
    );
    expect(hardwareText({ kind: 'fuel', amount: 0.85 })).toBe('Other fuel, 85\u00a0% ethanol');
    expect(hardwareText({ kind: 'bored', amount: 2 })).toBe('Carburettor bored, 2.0 mm');
  });

  it('an amount that is missing or far off is asked for', () => {
    expect(hardwareProblemSentence({ code: 'amount-missing', kind: 'bored' })).toContain('millimetres');
    expect(
      hardwareProblemSentence({ code: 'amount-out-of-range', kind: 'bored', amount: 40, most: 10 }),
    ).toContain('outside 0 to 10');
  });

  it('air from under the hood has its price in power', () => {
    const sentence = intakeCostSentence({
      warmer: kelvinDifference(30),
      cost: ratio(-0.055),
      ratedPower: horsepowerToWatt(150),
      units: US_UNITS,
    });
    expect(sentence).toBe('Air 54\u00a0°F warmer costs 5.5\u00a0% of the power, 8.3\u00a0hp of 150\u00a0hp.');
  });
});

describe('a backup file in words', () => {
  it('that cannot be used says why and that nothing was changed', () => {
    const said = [
      backupProblemSentence({ code: 'damaged', what: 'checksum' }),
      backupProblemSentence({ code: 'foreign' }),
      backupProblemSentence({ code: 'newer-format', format: 9, newest: 1 }),
      backupProblemSentence({ code: 'not-json' }),
      backupProblemSentence({ code: 'too-large', limit: 5 }),
    ];
    for (const sentence of said) expect(sentence).toContain('Nothing was changed.');
    expect(new Set(said).size).toBe(said.length);
  });
});
