import { describe, expect, it } from 'vitest';
import { compare, standardOf } from '@/lib/compare/compare';
import { expectOk } from '@/lib/result/result';
import { comparisonRecordSchema } from '@/lib/store/comparison-record';
import type { ComparisonRecord } from '@/lib/store/records';
import { wattToHorsepower } from '@/lib/units/convert';
import { verdictSentences, verdictTitle } from '@/lib/words/fair';
import { machineRecord } from '../support/machine-record';

const BASELINE_AIR = { temperatureC: -10, pressureHpa: 990, elevationM: 200, relativeHumidity: 0.7 };

type Given = {
  readonly before: readonly number[];
  readonly after: readonly number[];
  readonly jets?: { readonly before: number; readonly after: number };
  readonly hardware?: ComparisonRecord['hardware'];
};

function comparison({
  before,
  after,
  jets = { before: 410, after: 410 },
  hardware,
}: Given): ComparisonRecord {
  const pulls = (side: 'before' | 'after', powers: readonly number[]) =>
    powers.map((powerHp, i) => ({
      id: `${side}${i}`,
      side,
      air: BASELINE_AIR,
      setting: { mains: [jets[side], jets[side]] },
      powerHp,
    }));
  return comparisonRecordSchema.parse({
    name: 'Test',
    part: 'open airbox',
    machineId: 'twin',
    hardware,
    standard: 'sae-j1349-2004',
    pulls: [...pulls('before', before), ...pulls('after', after)],
  });
}

describe('a stored comparison', () => {
  it('takes five sizes rich and an airbox that came off for mixture, not for a part that makes power', () => {
    // 460 where 410 is right is 12.2 % rich; two sizes less air resistance leave 7 %. By 1 - 2 drift² 150 hp jetted
    // right make 145.5 before and 148.6 after.
    const record = comparison({
      before: [145.2, 145.9, 145.5],
      after: [148.9, 148.2, 148.7],
      jets: { before: 460, after: 460 },
      hardware: { kind: 'airbox-off', amount: null },
    });
    const fair = expectOk(compare(record, machineRecord()));
    expect(fair.total.low).toBeGreaterThan(0);
    expect(fair.verdict).toBe('explained-by-mixture');
    expect(fair.mixture.change / fair.total.change).toBeGreaterThan(0.6);
    expect(verdictTitle(fair.verdict)).toContain('explained by the mixture');
    expect(verdictSentences(fair, { part: record.part, ratedPower: null }).join(' ')).toContain(
      'It was rich before',
    );
  });

  it('finds an honest 4 hp part on three repeats of each', () => {
    const record = comparison({ before: [150.2, 149.8, 150], after: [154.1, 153.8, 154.2] });
    const fair = expectOk(compare(record, machineRecord()));
    expect(fair.verdict).toBe('part-gains');
    const part = fair.part.power;
    expect(wattToHorsepower(part!.low)).toBeLessThan(4);
    expect(wattToHorsepower(part!.high)).toBeGreaterThan(4);
  });

  it('counts the intake: pulls under the hood are corrected by the warmer air they drew', () => {
    const record = comparison({ before: [150], after: [150] });
    const cold = expectOk(compare(record, machineRecord()));
    const warm = expectOk(compare(record, machineRecord({}, { intakeOffsetC: 28 })));
    expect(warm.corrected!.before).toBeGreaterThan(cold.corrected!.before * 1.03);
  });

  it('says what is missing: a side without runs, a machine that is broken, jets that do not fit', () => {
    const missing = compare(comparison({ before: [150], after: [] }), machineRecord());
    expect(missing).toEqual({
      ok: false,
      reason: { code: 'fair', problem: { code: 'no-pulls', side: 'after' } },
    });
    const single = machineRecord({}, { carburettors: [{ main: 410 }] });
    expect(compare(comparison({ before: [150], after: [151] }), single)).toMatchObject({
      reason: { code: 'pull', problems: [{ reason: { code: 'mains-do-not-fit' } }] },
    });
    const bored = comparison({ before: [150], after: [151], hardware: { kind: 'bored', amount: null } });
    expect(compare(bored, machineRecord())).toMatchObject({ reason: { code: 'hardware' } });
  });

  it('with a standard nobody knows is read by the newest of SAE', () => {
    expect(standardOf({ standard: 'house rule' })).toBe('sae-j1349-2004');
    expect(standardOf({ standard: 'din-70020' })).toBe('din-70020');
  });
});

it('does not count the part before it was fitted, though the machine has it on its list of changes', () => {
  const hardware = { kind: 'airbox-off', amount: null } as const;
  const record = comparison({ before: [145, 146, 145.5], after: [149, 148.5, 149.2], hardware });
  const listed = machineRecord({
    hardware: [{ id: 'a', ...hardware, on: '2027-01-12', note: '' }],
  });
  expect(compare(record, listed)).toEqual(compare(record, machineRecord()));
});
