import { type AirDraft, BLANK_AIR } from '@/components/air/air-draft';
import { airField, airLabel, readAir } from '@/components/air/read-air';
import { complainOf } from '@/components/draft/complain-of';
import { type FormReading, fieldReader, ifTyped } from '@/components/draft/field-reader';
import { onlyUnits } from '@/components/draft/only-units';
import { readMainsText } from '@/components/draft/read-mains';
import { withoutGaps } from '@/components/draft/without-gaps';
import { airFromJson } from '@/lib/contract/air-from-json';
import { baselineSchema, type MachineJson } from '@/lib/contract/machine';
import { parseWith } from '@/lib/contract/parse';
import type { NewBaseline } from '@/lib/store/machine-history';
import { METRIC_UNITS, type UnitChoice } from '@/lib/units/choice';
import { numberText } from '@/lib/units/entry-text';
import { jetsText } from '@/lib/words/settings';

export type AirSource = 'log' | 'typed' | 'past';

export type NewBaselineDraft = {
  readonly units: UnitChoice;
  readonly source: AirSource;
  readonly mains: string;
  readonly trim: string;
  readonly judged: MachineJson['baseline']['judged'];
  readonly provenOn: string;
  readonly note: string;
  readonly air: AirDraft;
};

/** A new baseline: the jets of now, today, in an air that is yet to be said. */
export function newBaselineDraft(machine: MachineJson, units: UnitChoice, today: string): NewBaselineDraft {
  return {
    units: onlyUnits(units),
    source: 'typed',
    mains: jetsText(machine.carburettors.map(({ main }) => main)),
    trim: machine.trim === undefined ? '' : numberText(machine.trim.baseline),
    judged: 'right',
    provenOn: today,
    note: '',
    air: BLANK_AIR,
  };
}

export const BASELINE_SHAPE: NewBaselineDraft = {
  units: METRIC_UNITS,
  source: 'typed',
  mains: '',
  trim: '',
  judged: 'right',
  provenOn: '',
  note: '',
  air: BLANK_AIR,
};

/** What the draft of a baseline says, or what is wrong with which field. The id is given when it is kept. */
export function readNewBaseline(
  draft: NewBaselineDraft,
  machine: MachineJson,
): FormReading<Omit<NewBaseline, 'id'>> {
  const reader = fieldReader(draft.units);
  const mains = readMainsText(
    { name: 'mains', text: draft.mains, carburettors: machine.carburettors.length },
    reader,
  );
  const trim = ifTyped(draft.trim, () => reader.number({ name: 'trim', text: draft.trim, example: '2' }));
  const circuit = machine.trim;
  if (
    circuit !== undefined &&
    (trim === undefined || !Number.isInteger(trim) || trim < circuit.lowest || trim > circuit.highest)
  )
    reader.complain('trim', `Type a position from ${circuit.lowest} to ${circuit.highest}.`);
  const parsed = parseWith(
    baselineSchema,
    withoutGaps({
      air: readAir(draft.air, reader, 'air'),
      judged: draft.judged,
      provenOn: ifTyped(draft.provenOn, () => draft.provenOn),
      // The intake as it is now: a baseline of before another intake keeps its own offset.
      intakeOffsetC: machine.intakeOffsetC,
      note: ifTyped(draft.note, () => draft.note),
    }),
  );
  const toFields = {
    fieldOf: (path: readonly (string | number)[]) =>
      path[0] === 'air' ? airField(path, 'air') : String(path[0]),
    voice: { zone: 'UTC', units: draft.units },
  };
  if (!parsed.ok) complainOf(reader, parsed.reason, toFields);
  const air = parsed.ok ? airFromJson(parsed.value.air, ['air']) : null;
  if (air !== null && !air.ok) complainOf(reader, air.reason, toFields);
  const errors = reader.errors();
  if (!parsed.ok || mains === undefined || Object.keys(errors).length > 0) return { value: null, errors };
  return {
    value: {
      mains: [...mains],
      trim: circuit === undefined ? null : (trim ?? null),
      baseline: parsed.value,
    },
    errors,
  };
}

const LABELS: Readonly<Record<string, string>> = {
  source: 'In what air were they proven?',
  mains: 'Main jets',
  trim: 'Trim',
  judged: 'How the jets were judged',
  provenOn: 'Proven on',
  note: 'Note',
};

export function baselineLabel(name: string): string {
  return airLabel(name, 'air') ?? LABELS[name] ?? name;
}
