import { boxText } from '@/lib/carb/box-text';
import { INTAKE_CHOICES } from '@/lib/carb/intake-choices';
import { limitChoiceOf } from '@/lib/carb/limits';
import type { MachineJson } from '@/lib/contract/machine';
import { airDraft } from '@/lib/fields/air/air-rows';
import { blankDraft, draftFrom } from '@/lib/fields/table-values';
import { METRIC_UNITS, type UnitChoice } from '@/lib/units/choice';
import { numberText } from '@/lib/units/entry-text';
import { ratio } from '@/lib/units/quantity';
import { MACHINE, type MachineDraft } from './machine-rows';

/** Six texts, the given ones first. */
export function sixMains(mains: readonly string[]): readonly string[] {
  return Array.from({ length: 6 }, (_, i) => mains[i] ?? '');
}

/** A new machine: only its name, mains, box and baseline air are left to type. */
export function blankMachineDraft(units: UnitChoice): MachineDraft {
  const blank = blankDraft(MACHINE, units);
  const { choice } = blank.intake;
  const intake = { ...blank.intake, ...MACHINE.intake.sets.choice?.(choice as never, units) };
  return { ...blank, intake, mains: sixMains([]) };
}

/** The shape of a machine's draft: one kept by an older version of the app does not have it and is left aside. */
export const MACHINE_SHAPE: MachineDraft = blankMachineDraft(METRIC_UNITS);

/** The draft that reads back as `machine`. */
export function draftFromMachine(machine: MachineJson, units: UnitChoice): MachineDraft {
  const draft = draftFrom(MACHINE, machine, units);
  const mains = machine.carburettors.map(({ main }) => numberText(main));
  const { jetMarking, baseline, limits, intakeOffsetC } = machine;
  const marked = typeof jetMarking === 'string';
  const { leanPercent, richPercent, risk } = limits;
  const choice = limitChoiceOf({
    lean: ratio(leanPercent / 100),
    rich: ratio(richPercent / 100),
    risk: ratio(risk),
  });
  return {
    ...draft,
    carburettors: String(mains.length),
    staggered: mains.some((main) => main !== mains[0]),
    main: mains[0] ?? '',
    mains: sixMains(mains),
    marking: marked ? jetMarking : 'list',
    markingSure: machine.markingSure === true && marked ? jetMarking : '',
    list: marked ? '' : listText(jetMarking.list),
    box: { ...draft.box, text: boxText(machine.box) },
    baseline: {
      ...draft.baseline,
      ...airDraft(baseline.air, units),
      sameIntake: baseline.intakeOffsetC === undefined,
    },
    intake: { ...draft.intake, choice: intakeChoice(intakeOffsetC) },
    limits: { ...draft.limits, choice: choice ?? 'own' },
  };
}

function listText(jets: readonly { readonly size: number; readonly area: number }[]): string {
  return jets.map(({ size, area }) => `${numberText(size)} ${numberText(area)}`).join('\n');
}

/** Offsets this close to a choice's are that choice; more is not known of it. */
const SAME_OFFSET_K = 0.5;

function intakeChoice(offset: number): MachineDraft['intake']['choice'] {
  const choices = ['ducted', 'open', 'hood'] as const;
  return choices.find((name) => Math.abs(INTAKE_CHOICES[name] - offset) < SAME_OFFSET_K) ?? 'own';
}
