import type { CylinderVerdicts, Verdict } from '@/lib/carb/verdicts';
import { airDraft, airRowsAt } from '@/lib/fields/air/air-rows';
import { type DraftOf, type FieldTable, groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { blankDraft, draftFrom } from '@/lib/fields/table-values';
import type { LogRecord } from '@/lib/store/records';
import { clockFace, type HourStyle } from '@/lib/time/zone';
import { METRIC_UNITS, type UnitChoice } from '@/lib/units/choice';
import { judgedByText } from '@/lib/words/log';
import { jetsText } from '@/lib/words/settings';
import { RUN_VERDICTS } from '@/lib/words/verdict-choices';

const f = fieldRowsFor<LogRecord>();
const air = airRowsAt<LogRecord>('air');

const JUDGES = ['plugs', 'exhaust-temperature', 'wideband', 'piston-wash', 'clock', 'feel'] as const;

/** One run of the log. */
export const LOG = {
  top: groupOf({
    machineId: f.choice<string>({
      label: 'Machine',
      at: 'machineId',
      blank: '',
      control: 'select',
      options: [],
    }),
    run: f.text({ label: 'Run', at: 'run', maxLength: 80 }),
    date: f.text({ label: 'Date', type: 'date' }),
    clock: f.raw({
      label: 'Time of day',
      at: 'at',
      clock: '18:30',
      inputMode: 'text',
      autoComplete: 'off',
    }),
    mains: f.raw({ label: 'Main jets', at: 'setting.mains', hint: '410, or 410 400 410', inputMode: 'text' }),
    trim: f.number({ label: 'Trim', at: 'setting.trim', optional: true, signed: true, example: '2' }),
    /** `each`: cylinder by cylinder, in the draft's `verdicts`. */
    verdict: f.choice({
      label: 'Verdict',
      blank: 'none',
      options: [...RUN_VERDICTS, { value: 'each', label: 'By cylinder' }],
    }),
    sizes: f.number({ label: 'By how many sizes', at: 'sizes', optional: true, example: '1' }),
    judgedBy: f.choice({
      label: 'Judged by',
      at: 'judgedBy',
      blank: 'none',
      none: 'none',
      control: 'select',
      options: [
        { value: 'none', label: 'Not said' },
        ...JUDGES.map((judge) => ({ value: judge, label: judgedByText(judge) })),
      ],
    }),
    seconds: f.number({ label: 'Time', at: 'seconds', optional: true, unit: 's', example: '6.42' }),
    speed: f.speed({ label: 'Speed', at: 'speedKmh', optional: true, example: '120' }),
    note: f.text({ label: 'Note', at: 'note', maxLength: 1000 }),
  }),
  air: groupOf(air.rows, air),
} satisfies FieldTable;

export type LogDraft = DraftOf<typeof LOG> & { readonly verdicts: readonly (Verdict | 'none')[] };

type Start = {
  readonly units: UnitChoice;
  readonly machineId: string;
  readonly date: string;
  readonly mains: string;
};

export function blankLogDraft({ units, ...start }: Start): LogDraft {
  return { ...blankDraft(LOG, units), ...start, verdicts: [] };
}

/** The shape of a kept draft. */
export const LOG_SHAPE: LogDraft = { ...blankDraft(LOG, METRIC_UNITS), verdicts: ['none'] };

/** The draft that reads back as `entry`, its time on the person's clock. */
export function logDraft(entry: LogRecord, units: UnitChoice, hours: HourStyle): LogDraft {
  const { at, setting, verdict, verdicts } = entry;
  const draft = draftFrom(LOG, entry, units);
  return {
    ...draft,
    date: at.slice(0, 10),
    clock: clockFace(at.slice(11, 16), hours),
    mains: jetsText(setting.mains),
    verdict: verdicts === undefined ? (verdict ?? 'none') : 'each',
    verdicts: (verdicts ?? []).map((each) => each ?? 'none'),
    sizes: verdict === 'right' ? '' : draft.sizes,
    air: airDraft(entry.air, units),
  };
}

/** What the draft says of each of so many cylinders; null where nobody looked. */
export function cylindersOf(
  { verdict, verdicts }: Pick<LogDraft, 'verdict' | 'verdicts'>,
  cylinders: number,
): CylinderVerdicts {
  return Array.from({ length: cylinders }, (_, i) => {
    const each = verdict === 'each' ? (verdicts[i] ?? 'none') : verdict;
    return each === 'none' ? null : each;
  });
}
