import { airFromJson } from '@/lib/contract/air-from-json';
import { parseWith } from '@/lib/contract/parse';
import { airDraft, airRowsAt } from '@/lib/fields/air/air-rows';
import { type FormReading, fieldReader } from '@/lib/fields/field-reader';
import { type DraftOf, type FieldTable, groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { formReading } from '@/lib/fields/form-reading';
import { readMainsText } from '@/lib/fields/read-mains';
import { blankDraft, fieldAt, readFields } from '@/lib/fields/table-values';
import { pullSchema } from '@/lib/store/comparison-record';
import type { ComparisonRecord, LogRecord, MachineRecord } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { numberText } from '@/lib/units/entry-text';
import { speedFrom, speedUnit } from '@/lib/words/log';
import { jetsText } from '@/lib/words/settings';

type Pull = ComparisonRecord['pulls'][number];

export type Measure = 'power' | 'time' | 'speed';

const f = fieldRowsFor<Pull>();
const air = airRowsAt<Pull>('air');

/** Runs of one side in one air on the same jets, their measures together: "151.2 150.8 151.9". */
export const PULL = {
  top: groupOf({
    side: f.choice({
      label: 'Before or after the part',
      at: 'side',
      blank: 'before',
      options: [
        { value: 'before', label: 'Before' },
        { value: 'after', label: 'After' },
      ],
    }),
    measures: f.raw({
      label: 'Measured',
      hint: 'Several runs in the same air on the same jets: one after the other, a space between. Three show the scatter.',
      signed: false,
      inputMode: 'text',
    }),
    mains: f.raw({ label: 'Main jets', at: 'setting.mains', hint: '410, or 410 400 410' }),
    trim: f.number({ label: 'Trim', at: 'setting.trim', optional: true, signed: true, example: '2' }),
    note: f.text({ label: 'Note', at: 'note', maxLength: 500 }),
  }),
  air: groupOf(air.rows, air),
} satisfies FieldTable;

export type PullDraft = DraftOf<typeof PULL>;

/** A pull that is yet to be measured, on the jets of now. */
export function blankPullDraft(units: UnitChoice, side: Pull['side'], mains: string): PullDraft {
  return { ...blankDraft(PULL, units), side, mains };
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
): FormReading<readonly Omit<Pull, 'id'>[]> {
  const reader = fieldReader(draft.units);
  const example = EXAMPLES[measure];
  const texts = draft.measures.split(/[\s;]+/).filter((text) => text !== '');
  if (texts.length === 0) reader.complain('measures', `Type what was measured, such as ${example}.`);
  const values = texts.map((text) => reader.read('number', { name: 'measures', text, example }));
  const carburettors = machine.machine.carburettors.length;
  const read = readFields(PULL, draft, reader, {
    mains: () => readMainsText({ name: 'mains', text: draft.mains, carburettors }, reader),
  });
  const pulls = values.flatMap((value) => {
    const speed = measure === 'speed' && value !== undefined;
    const pull = formReading(
      reader,
      {
        ...read,
        id: 'typed',
        powerHp: measure === 'power' ? value : null,
        seconds: measure === 'time' ? value : null,
        speedKmh: speed ? speedFrom(value, speedUnit(draft.units)) : null,
      },
      {
        parse: (json) => parseWith(pullSchema, json),
        check: (json) => airFromJson(json.air, ['air']),
        fieldOf: (path) => fieldAt(PULL, draft, path) ?? 'measures',
      },
    );
    return pull.value === null ? [] : [pull.value];
  });
  const errors = reader.errors();
  return { value: Object.keys(errors).length > 0 ? null : pulls.map(({ id: _, ...pull }) => pull), errors };
}
