import { describe, expect, it } from 'vitest';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { expectOk } from '@/lib/result/result';
import { machineTonight } from '@/lib/store/machine-tonight';
import type { LogRecord } from '@/lib/store/records';
import { tonightLines } from '@/lib/words/tonight';
import { loggedRun, machineRecord } from '../support/machine-record';

const record = machineRecord();
const AIR = { temperatureC: -10, pressureHpa: 990, elevationM: 200, relativeHumidity: 0.7 };
const run = (round: number, change: Partial<LogRecord>) =>
  loggedRun(`r${round}`, {
    run: `Round ${round}`,
    at: `2027-01-16T${18 + round}:00:00-06:00`,
    air: AIR,
    ...change,
  }).value;
const lean = { verdict: 'lean', sizes: null } as const;
const on = (main: number) => ({ setting: { mains: [main, main], trim: null } });
const lines = (...log: readonly LogRecord[]) =>
  tonightLines(expectOk(machineFromJson(machineTonight(record, null, log))), log);

describe('What the lean runs of a night come to', () => {
  it('is nothing where none was lean', () => {
    expect(lines(run(1, {}), run(2, { verdict: 'rich', sizes: 1 }), run(3, { verdict: null }))).toEqual([]);
  });

  it('is what the plan does about it, told as one verdict', () => {
    const [only, ...none] = lines(run(1, {}), run(3, lean));
    expect(only).toMatch(
      /^Round 3 was logged lean: planned 2\.\d.% richer than the baseline until a run says otherwise\. It is one verdict\.$/,
    );
    expect(none).toEqual([]);
  });

  it('says how a later run counts: right on the richer jet keeps it, right on the old one ends it', () => {
    const kept = lines(run(3, lean), run(4, on(420)));
    expect(kept).toHaveLength(2);
    expect(kept[1]).toBe('Round 4 was logged good on 420: that is counted in.');
    expect(lines(run(3, lean), run(4, {}))).toEqual([
      'Round 4 was logged good on 410: the plan goes by the baseline again.',
    ]);
    // A run without a verdict says nothing.
    expect(lines(run(3, lean), run(4, { verdict: null }))).toHaveLength(1);
  });

  it('never lets a lean run pass in silence, also where the baseline is richer anyway', () => {
    const [only] = lines(run(3, { ...lean, ...on(390) }));
    expect(only).toMatch(
      /^Round 3 was logged lean on 390\. The plan is as rich as the baseline and no richer/,
    );
    expect(only).toContain('read the plugs');
  });

  it('goes by the order of the runs, not by the order of the writing', () => {
    expect(lines(run(4, {}), run(3, lean))).toEqual(lines(run(3, lean), run(4, {})));
  });
});
