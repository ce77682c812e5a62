import { airDraft, BLANK_AIR } from '@/components/air/air-draft';
import { onlyUnits } from '@/components/draft/only-units';
import { boxText } from '@/lib/carb/box-text';
import { INTAKE_CHOICES, type IntakeChoice } from '@/lib/carb/intake-choices';
import { LIMIT_CHOICES, limitChoiceOf } from '@/lib/carb/limits';
import { DEFAULT_RESPONSE } from '@/lib/carb/response';
import type { MachineJson } from '@/lib/contract/machine';
import type { UnitChoice } from '@/lib/units/choice';
import { temperatureStepIn } from '@/lib/units/choice';
import { celsiusToKelvin } from '@/lib/units/convert';
import { numberText, percentText, temperatureStepText, temperatureText } from '@/lib/units/entry-text';
import { type KelvinDifference, kelvinDifference, ratio } from '@/lib/units/quantity';
import {
  type BaselineDraft,
  type LimitsDraft,
  type MachineDraft,
  type ResponseDraft,
  sixMains,
} from './machine-draft';

/** The offset of an intake choice as a field shows it: whole degrees, for more is not known. */
export function intakeOffsetText(choice: IntakeChoice, units: UnitChoice): string {
  return numberText(temperatureStepIn(INTAKE_CHOICES[choice], units.temperature), 0);
}

const LIMIT_NAMES = ['race', 'trail', 'break-in'] as const;

export function limitsDraft(choice: (typeof LIMIT_NAMES)[number]): LimitsDraft {
  const { lean, rich, risk } = LIMIT_CHOICES[choice];
  return {
    choice,
    leanPercent: percentText(lean),
    richPercent: percentText(rich),
    risk: percentText(risk),
  };
}

const DEFAULT_RESPONSE_DRAFT: ResponseDraft = {
  own: false,
  origin: 'typed',
  pressureExponent: numberText(DEFAULT_RESPONSE.pressureExponent),
  temperatureExponent: numberText(DEFAULT_RESPONSE.temperatureExponent),
  pressureSd: numberText(DEFAULT_RESPONSE.pressureSd),
  temperatureSd: numberText(DEFAULT_RESPONSE.temperatureSd),
  correlation: numberText(DEFAULT_RESPONSE.correlation),
};

/** A new machine: only its name, mains, box and baseline air are left to type. */
export function blankMachineDraft(units: UnitChoice): MachineDraft {
  return {
    units: onlyUnits(units),
    name: '',
    carburettors: '2',
    staggered: false,
    main: '',
    mains: sixMains([]),
    marking: 'flow',
    markingSure: '',
    list: '',
    box: { how: 'typed', text: '', from: '', to: '', by: '10', each: '2' },
    baseline: {
      ...BLANK_AIR,
      judged: 'right',
      provenOn: '',
      note: '',
      sameIntake: true,
      intakeOffset: '',
    },
    intake: { choice: 'ducted', offset: intakeOffsetText('ducted', units) },
    trim: { on: false, lowest: '1', highest: '3', baseline: '2', percentPerPosition: '' },
    pilot: {
      on: false,
      jet: '',
      jets: '',
      screw: 'fuel',
      turns: '',
      leastTurns: '0.5',
      mostTurns: '2.25',
      turnsPerSize: '1.25',
      percentPerSize: '6',
    },
    needle: { on: false, groove: '3', grooves: '5', percentPerGroove: '2.5' },
    limits: limitsDraft('race'),
    response: DEFAULT_RESPONSE_DRAFT,
    fuelDensity: { on: false, offset: '0', baseline: '' },
    richPowerLoss: '2',
    swapWorthPercent: '',
    ratedPowerHp: '',
  };
}

/** The draft that reads back as `machine`. */
export function draftFromMachine(machine: MachineJson, units: UnitChoice): MachineDraft {
  const blank = blankMachineDraft(units);
  const mains = machine.carburettors.map(({ main }) => numberText(main));
  const { jetMarking } = machine;
  return {
    ...blank,
    name: machine.name,
    carburettors: String(mains.length),
    staggered: mains.some((main) => main !== mains[0]),
    main: mains[0] ?? '',
    mains: sixMains(mains),
    marking: typeof jetMarking === 'string' ? jetMarking : 'list',
    markingSure: machine.markingSure === true && typeof jetMarking === 'string' ? jetMarking : '',
    list: typeof jetMarking === 'string' ? '' : listText(jetMarking.list),
    box: { ...blank.box, text: boxText(machine.box) },
    baseline: baselineDraft(machine.baseline, units),
    intake: intakeDraft(kelvinDifference(machine.intakeOffsetC), units),
    trim: machine.trim === undefined ? blank.trim : { on: true, ...texts(machine.trim) },
    pilot: machine.pilot === undefined ? blank.pilot : pilotDraft(machine.pilot),
    needle: machine.needle === undefined ? blank.needle : { on: true, ...texts(machine.needle) },
    limits: ownLimitsDraft(machine.limits),
    response: responseDraft(machine.response),
    fuelDensity: fuelDraft(machine.fuelDensity, units) ?? blank.fuelDensity,
    richPowerLoss: numberText(machine.richPowerLoss),
    swapWorthPercent: machine.swapWorthPercent === undefined ? '' : numberText(machine.swapWorthPercent),
    ratedPowerHp: machine.ratedPowerHp === undefined ? '' : numberText(machine.ratedPowerHp),
  };
}

/** Every number of an object as text, under the same name. */
function texts<K extends string>(numbers: Readonly<Record<K, number>>): Record<K, string> {
  const entries = Object.entries<number>(numbers).map(([key, value]) => [key, numberText(value)]);
  // fromEntries forgets which keys went in; they are the ones of `numbers`.
  return Object.fromEntries(entries) as Record<K, string>;
}

function listText(jets: readonly { readonly size: number; readonly area: number }[]): string {
  return jets.map(({ size, area }) => `${numberText(size)} ${numberText(area)}`).join('\n');
}

function baselineDraft(baseline: MachineJson['baseline'], units: UnitChoice): BaselineDraft {
  const { air, judged, provenOn = '', note = '', intakeOffsetC } = baseline;
  return {
    ...airDraft(air, units),
    judged,
    provenOn,
    note,
    sameIntake: intakeOffsetC === undefined,
    intakeOffset:
      intakeOffsetC === undefined ? '' : temperatureStepText(kelvinDifference(intakeOffsetC), units),
  };
}

/** Offsets this close to a choice's are that choice; more is not known of it. */
const SAME_OFFSET_K = 0.5;

function intakeDraft(offset: KelvinDifference, units: UnitChoice): MachineDraft['intake'] {
  const choices: readonly IntakeChoice[] = ['ducted', 'open', 'hood'];
  const choice = choices.find((name) => Math.abs(INTAKE_CHOICES[name] - offset) < SAME_OFFSET_K);
  return { choice: choice ?? 'own', offset: temperatureStepText(offset, units) };
}

function pilotDraft({
  jet,
  jets,
  screw,
  ...numbers
}: NonNullable<MachineJson['pilot']>): MachineDraft['pilot'] {
  return {
    on: true,
    jet: numberText(jet),
    jets: jets.map((size) => numberText(size)).join(' '),
    screw,
    ...texts(numbers),
  };
}

function ownLimitsDraft({ leanPercent, richPercent, risk }: MachineJson['limits']): LimitsDraft {
  const limits = { lean: ratio(leanPercent / 100), rich: ratio(richPercent / 100), risk: ratio(risk) };
  return {
    choice: limitChoiceOf(limits) ?? 'own',
    leanPercent: numberText(leanPercent),
    richPercent: numberText(richPercent),
    risk: percentText(limits.risk),
  };
}

function responseDraft(response: MachineJson['response']): ResponseDraft {
  if (response === undefined) return DEFAULT_RESPONSE_DRAFT;
  const { origin, ...numbers } = response;
  return { own: true, origin, ...texts(numbers) };
}

function fuelDraft(fuel: MachineJson['fuelDensity'], units: UnitChoice): MachineDraft['fuelDensity'] | null {
  if (fuel === undefined) return null;
  return {
    on: true,
    offset: temperatureStepText(kelvinDifference(fuel.offsetC), units),
    baseline: temperatureText(celsiusToKelvin(fuel.baselineC), units),
  };
}
