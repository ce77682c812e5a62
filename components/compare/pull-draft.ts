import { type AirDraft, airDraft, BLANK_AIR } from '@/components/air/air-draft';
import { airField, airLabel, readAir } from '@/components/air/read-air';
import { complainOf } from '@/components/draft/complain-of';
import { type FormReading, fieldReader, ifTyped } from '@/components/draft/field-reader';
import { onlyUnits } from '@/components/draft/only-units';
import { readMainsText } from '@/components/draft/read-mains';
import type { PullRecord } from '@/lib/compare/compare';
import { airFromJson } from '@/lib/contract/air-from-json';
import { parseWith } from '@/lib/contract/parse';
import type { Side } from '@/lib/power/pull';
import { pullSchema } from '@/lib/store/comparison-record';
import type { LogRecord, MachineRecord } from '@/lib/store/records';
import { METRIC_UNITS, type UnitChoice } from '@/lib/units/choice';
import { numberText } from '@/lib/units/entry-text';
import { speedFrom, speedUnit } from '@/lib/words/log';
import { jetsText } from '@/lib/words/settings';

export type Measure = 'power' | 'time' | 'speed';

/** Runs of one side in one air on the same jets, their measures together: "151.2 150.8 151.9". */
export type PullDraft = {
  readonly units: UnitChoice;
  readonly side: Side;
  readonly measures: string;
  readonly mains: string;
  readonly trim: string;
  readonly note: string;
  readonly air: AirDraft;
};

export const PULL_SHAPE: PullDraft = {
  units: METRIC_UNITS,
  side: 'before',
  measures: '',
  mains: '',
  trim: '',
  note: '',
  air: BLANK_AIR,
};

export function blankPullDraft(units: UnitChoice, side: Side, mains: string): PullDraft {
  return { ...PULL_SHAPE, units: onlyUnits(units), side, mains };
}

/** The draft with what a run of the log says. */
export function pullFromLog(draft: PullDraft, run: LogRecord, measure: Measure): PullDraft {
  const measured = measure === 'time' ? run.seconds : null;
  return {
    ...draft,
    measures: measured === null ? draft.measures : `${draft.measures} ${numberText(measured)}`.trim(),
    mains: jetsText(run.setting.mains),
    trim: run.setting.trim === null ? '' : String(run.setting.trim),
    air: airDraft(run.air, draft.units),
  };
}

const EXAMPLES: Readonly<Record<Measure, string>> = { power: '151.2', time: '6.42', speed: '105' };

type Context = { readonly machine: MachineRecord; readonly measure: Measure };

/** What a draft says: one run for each measure, or what is wrong with which field. Ids are given when kept. */
export function readPulls(
  draft: PullDraft,
  { machine, measure }: Context,
): FormReading<readonly Omit<PullRecord, 'id'>[]> {
  const reader = fieldReader(draft.units);
  const texts = draft.measures.split(/[\s;]+/).filter((text) => text !== '');
  if (texts.length === 0)
    reader.complain('measures', `Type what was measured, such as ${EXAMPLES[measure]}.`);
  const values = texts.map((text) => reader.number({ name: 'measures', text, example: EXAMPLES[measure] }));
  const mains = readMainsText(
    { name: 'mains', text: draft.mains, carburettors: machine.machine.carburettors.length },
    reader,
  );
  const trim = ifTyped(draft.trim, () => reader.number({ name: 'trim', text: draft.trim, example: '2' }));
  const air = readAir(draft.air, reader, 'air');
  const toFields = {
    fieldOf: ([head, ...rest]: readonly (string | number)[]) =>
      head === 'air' ? airField(rest, 'air') : head === 'setting' ? 'mains' : 'measures',
    voice: { zone: 'UTC', units: draft.units },
  };
  const pulls = values.flatMap((value) => {
    const parsed = parseWith(pullSchema, {
      id: 'typed',
      side: draft.side,
      air,
      setting: { mains, trim: trim ?? null },
      powerHp: measure === 'power' ? value : null,
      seconds: measure === 'time' ? value : null,
      speedKmh: measure === 'speed' && value !== undefined ? speedFrom(value, speedUnit(draft.units)) : null,
      note: draft.note,
    });
    if (!parsed.ok) complainOf(reader, parsed.reason, toFields);
    const read = parsed.ok ? airFromJson(parsed.value.air, ['air']) : null;
    if (read !== null && !read.ok) complainOf(reader, read.reason, toFields);
    return parsed.ok ? [parsed.value] : [];
  });
  const errors = reader.errors();
  return { value: Object.keys(errors).length > 0 ? null : pulls.map(({ id: _, ...pull }) => pull), errors };
}

const LABELS: Readonly<Record<string, string>> = {
  side: 'Before or after the part',
  measures: 'Measured',
  mains: 'Main jets',
  trim: 'Trim',
  note: 'Note',
};

export function pullLabel(name: string): string {
  return airLabel(name, 'air') ?? LABELS[name] ?? name;
}
