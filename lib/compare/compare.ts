import type { Air } from '@/lib/air/air';
import { drifts } from '@/lib/carb/drift';
import { type HardwareProblem, hardwareShift } from '@/lib/carb/hardware';
import { intakeAir } from '@/lib/carb/intake';
import { addShifts } from '@/lib/carb/judged';
import type { Machine } from '@/lib/carb/machine';
import { logIdealSd } from '@/lib/carb/response';
import { airFromJson } from '@/lib/contract/air-from-json';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import type { ContractProblem } from '@/lib/contract/problem';
import { settingOf, settingProblems } from '@/lib/contract/setting-problems';
import { DEFAULT_FAIR_OPTIONS, type FairComparison, fairComparison } from '@/lib/power/fair-comparison';
import type { FairProblem, Measured, Pull, Side } from '@/lib/power/pull';
import { STANDARD_IDS, type StandardId } from '@/lib/power/standards';
import { fail, ok, type Result } from '@/lib/result/result';
import { machineBeforeLearning } from '@/lib/store/machine-in-force';
import type { ComparisonRecord, MachineRecord } from '@/lib/store/records';
import { horsepowerToWatt, kilometrePerHourToSpeed } from '@/lib/units/convert';
import { metre, ratio, second } from '@/lib/units/quantity';

export type PullRecord = ComparisonRecord['pulls'][number];

/** Why runs cannot be compared yet. */
export type CompareProblem =
  | { readonly code: 'fair'; readonly problem: FairProblem }
  | { readonly code: 'machine'; readonly problems: readonly ContractProblem[] }
  | { readonly code: 'pull'; readonly pull: PullRecord; readonly problems: readonly ContractProblem[] }
  | { readonly code: 'hardware'; readonly problem: HardwareProblem };

/** The standard a record names; the newest SAE one where it is of another program or version. */
export function standardOf({ standard }: Pick<ComparisonRecord, 'standard'>): StandardId {
  return STANDARD_IDS.find((id) => id === standard) ?? DEFAULT_FAIR_OPTIONS.standard;
}

/**
 * The fair comparison of a record. Where the part is one that moves the mixture by itself, the right jets are taken to
 * have moved with it on the after side, as surely as that is known.
 */
export function compare(
  record: ComparisonRecord,
  machine: MachineRecord,
): Result<FairComparison, CompareProblem> {
  const read = machineFromJson(machineBeforeLearning(withoutPart(machine, record)));
  if (!read.ok) return fail({ code: 'machine', problems: read.reason });
  const after = withPart(read.value, record);
  if (!after.ok) return after;
  const machines: Readonly<Record<Side, Machine>> = { before: read.value, after: after.value };
  const pulls = record.pulls.map((pull) => pullOf(pull, machines[pull.side], record));
  const bad = pulls.find((pull) => !pull.ok);
  if (bad !== undefined && !bad.ok) return bad;
  const side = (name: Side): readonly Pull[] =>
    pulls.flatMap((pull, i) => (pull.ok && record.pulls[i]?.side === name ? [pull.value] : []));
  const compared = fairComparison(side('before'), side('after'), {
    ...DEFAULT_FAIR_OPTIONS,
    standard: standardOf(record),
    richPowerLoss: { ...DEFAULT_FAIR_OPTIONS.richPowerLoss, mean: read.value.richPowerLoss },
  });
  return compared.ok ? compared : fail({ code: 'fair', problem: compared.reason });
}

/** The machine as it was before the part, where the part is on the list of what was changed too. */
function withoutPart(machine: MachineRecord, { hardware }: ComparisonRecord): MachineRecord {
  if (hardware === undefined) return machine;
  return { ...machine, hardware: machine.hardware.filter(({ kind }) => kind !== hardware.kind) };
}

function withPart(machine: Machine, { hardware }: ComparisonRecord): Result<Machine, CompareProblem> {
  if (hardware === undefined) return ok(machine);
  const shift = hardwareShift(hardware);
  if (!shift.ok) return fail({ code: 'hardware', problem: shift.reason });
  return ok({
    ...machine,
    baselineShift: addShifts(machine.baselineShift ?? { log: 0, sd: 0 }, shift.value),
  });
}

function pullOf(pull: PullRecord, machine: Machine, record: ComparisonRecord): Result<Pull, CompareProblem> {
  const ambient = airFromJson(pull.air, ['air']);
  const unfit = settingProblems(pull.setting, machine, ['setting']);
  if (!ambient.ok || unfit.length > 0)
    return fail({ code: 'pull', pull, problems: [...unfit, ...(ambient.ok ? [] : ambient.reason)] });
  return ok({
    measured: measuredOf(pull, record),
    air: intakeAir(ambient.value, machine.intakeOffset),
    drift: driftOf(pull, machine, ambient.value),
  });
}

/** The schema holds that exactly one of the three is given. */
function measuredOf({ powerHp, seconds, speedKmh }: PullRecord, { distanceM }: ComparisonRecord): Measured {
  if (powerHp !== null) return { kind: 'power', power: horsepowerToWatt(powerHp) };
  if (speedKmh !== null) return { kind: 'speed', speed: kilometrePerHourToSpeed(speedKmh) };
  return {
    kind: 'time',
    time: second(seconds ?? 0),
    distance: distanceM === null ? null : metre(distanceM),
  };
}

/** Mean drift over the carburettors, as sure as baseline and response are. */
function driftOf({ setting }: PullRecord, machine: Machine, air: Air): Pull['drift'] {
  const each = drifts(machine, settingOf(setting, machine), air);
  const mean = each.reduce<number>((sum, drift) => sum + drift, 0) / each.length;
  return { mean: ratio(mean), sd: ratio((1 + mean) * logIdealSd(machine, air)) };
}
