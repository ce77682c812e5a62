import type { Air } from '@/lib/air/air';
import { normaliseBox } from '@/lib/carb/box';
import { hardwareShifts } from '@/lib/carb/hardware';
import { markingProblem } from '@/lib/carb/jets';
import { addShifts, judgedShift } from '@/lib/carb/judged';
import type {
  BaselinePressure,
  BaselineShift,
  JetMarking,
  Machine,
  Needle,
  Pilot,
  Response,
  Trim,
} from '@/lib/carb/machine';
import { DEFAULT_RESPONSE } from '@/lib/carb/response';
import { fail, ok, type Result } from '@/lib/result/result';
import { celsiusToKelvin, horsepowerToWatt } from '@/lib/units/convert';
import { kelvinDifference, metre, type Ratio, ratio } from '@/lib/units/quantity';
import { airFromJson } from './air-from-json';
import type { MachineJson } from './machine';
import type { ContractProblem, Path } from './problem';

/** A machine as the planner wants it, or every reason why it cannot be one. `path` is where the machine sits in what was sent. */
export function machineFromJson(
  json: MachineJson,
  path: Path = [],
): Result<Machine, readonly ContractProblem[]> {
  const air = airFromJson(json.baseline.air, [...path, 'baseline', 'air']);
  const hardware = hardwareShifts(json.hardware ?? []);
  const problems = [
    ...listProblems(json, path),
    ...jetProblems(json, path),
    ...(air.ok ? [] : air.reason),
    ...(hardware.ok ? [] : [{ path: [...path, 'hardware'], reason: hardware.reason }]),
  ];
  if (!air.ok || !hardware.ok || problems.length > 0) return fail(problems);
  return ok(provenMachine(json, air.value, hardware.value.total));
}

/** The machine with what is believed of its baseline: how it was judged and what was changed since, or what a log taught. */
function provenMachine(json: MachineJson, baselineAir: Air, hardware: BaselineShift): Machine {
  const machine = asBuilt(json, baselineAir);
  const main = json.carburettors[0]?.main;
  if (main === undefined) return machine;
  if (json.baselineShift !== undefined)
    return { ...machine, baselineShift: { log: json.baselineShift.logArea, sd: json.baselineShift.sd } };
  const judged = judgedShift(json.baseline.judged, { ...machine, main });
  return { ...machine, baselineShift: addShifts(judged, hardware) };
}

function asBuilt(json: MachineJson, baselineAir: Air): Machine {
  return {
    name: json.name,
    carburettors: json.carburettors,
    marking: markingFromJson(json.jetMarking),
    ...(json.markingSure === undefined ? {} : { markingSure: json.markingSure }),
    box: normaliseBox(json.box),
    baselineAir,
    baselinePressure: baselinePressure(json.baseline.air),
    intakeOffset: kelvinDifference(json.intakeOffsetC),
    baselineIntakeOffset: kelvinDifference(json.baseline.intakeOffsetC ?? json.intakeOffsetC),
    trim: json.trim === undefined ? null : trimFromJson(json.trim),
    limits: {
      lean: percent(json.limits.leanPercent),
      rich: percent(json.limits.richPercent),
      risk: ratio(json.limits.risk),
    },
    response: json.response === undefined ? DEFAULT_RESPONSE : responseFromJson(json.response),
    pilot: json.pilot === undefined ? null : pilotFromJson(json.pilot),
    needle: json.needle === undefined ? null : needleFromJson(json.needle),
    fuelDensity:
      json.fuelDensity === undefined
        ? null
        : {
            offset: kelvinDifference(json.fuelDensity.offsetC),
            baselineTemperature: celsiusToKelvin(json.fuelDensity.baselineC),
          },
    richPowerLoss: json.richPowerLoss,
    swapWorth: json.swapWorthPercent === undefined ? null : percent(json.swapWorthPercent),
    ratedPower: json.ratedPowerHp === undefined ? null : horsepowerToWatt(json.ratedPowerHp),
    ...(json.tonight === undefined ? {} : { tonight: json.tonight }),
  };
}

function baselinePressure({
  elevationM,
  pressureConfirmed = false,
}: MachineJson['baseline']['air']): BaselinePressure {
  return { elevation: elevationM === undefined ? null : metre(elevationM), confirmed: pressureConfirmed };
}

const percent = (value: number): Ratio => ratio(value / 100);

function markingFromJson(json: MachineJson['jetMarking']): JetMarking {
  if (json === 'flow' || json === 'bore') return { kind: json };
  return { kind: 'list', jets: [...json.list].sort((a, b) => a.size - b.size) };
}

function trimFromJson({
  lowest,
  highest,
  baseline,
  percentPerPosition,
}: NonNullable<MachineJson['trim']>): Trim {
  return { lowest, highest, baseline, richerPerPosition: percent(percentPerPosition) };
}

function responseFromJson({ origin: _, ...response }: NonNullable<MachineJson['response']>): Response {
  return response;
}

function pilotFromJson({ percentPerSize, ...pilot }: NonNullable<MachineJson['pilot']>): Pilot {
  return { ...pilot, richerPerSize: percent(percentPerSize) };
}

function needleFromJson({ percentPerGroove, ...needle }: NonNullable<MachineJson['needle']>): Needle {
  return { ...needle, richerPerGroove: percent(percentPerGroove) };
}

function listProblems(json: MachineJson, path: Path): readonly ContractProblem[] {
  const reason = markingProblem(markingFromJson(json.jetMarking));
  return reason === null ? [] : [{ path: [...path, 'jetMarking', 'list'], reason }];
}

/** With a list of jets, every jet named must be in it, or its area is unknown. */
function jetProblems(json: MachineJson, path: Path): readonly ContractProblem[] {
  if (typeof json.jetMarking === 'string') return [];
  const listed = new Set(json.jetMarking.list.map((jet) => jet.size));
  const named = [
    ...json.carburettors.map(({ main }, i) => ({ size: main, at: [...path, 'carburettors', i, 'main'] })),
    ...json.box.map(({ size }, i) => ({ size, at: [...path, 'box', i, 'size'] })),
  ];
  return named
    .filter(({ size }) => !listed.has(size))
    .map(({ size, at }) => ({ path: at, reason: { code: 'jet-not-in-list', size } }));
}
