import { airField, airLabel, readAir } from '@/components/air/read-air';
import { complainOf } from '@/components/draft/complain-of';
import { type FieldReader, type FormReading, fieldReader, ifTyped } from '@/components/draft/field-reader';
import { readMainsText } from '@/components/draft/read-mains';
import { leanestVerdict, verdictFields } from '@/lib/carb/verdicts';
import { airFromJson } from '@/lib/contract/air-from-json';
import { parseWith } from '@/lib/contract/parse';
import type { Path } from '@/lib/contract/problem';
import { type LogRecord, logRecordSchema, type MachineRecord, type Stored } from '@/lib/store/records';
import { fromLocal } from '@/lib/time/local';
import { isoLocal } from '@/lib/time/zone';
import { clockProblemSentence } from '@/lib/words/clock-problems';
import { speedFrom, speedUnit } from '@/lib/words/log';
import { cylindersOf, type LogDraft } from './log-draft';

type Context = {
  readonly machines: readonly Stored<MachineRecord>[];
  /** The entry that is changed; null for a new one. */
  readonly before: LogRecord | null;
  /** Where a new entry's clock is. */
  readonly zone: string;
};

/** What the draft of a log entry says, or what is wrong with which field. */
export function readLogEntry(draft: LogDraft, context: Context): FormReading<LogRecord> {
  const reader = fieldReader(draft.units);
  const parsed = parseWith(logRecordSchema, candidate(draft, reader, context));
  const toFields = { fieldOf: logField, voice: { zone: context.zone, units: draft.units } };
  if (!parsed.ok) complainOf(reader, parsed.reason, toFields);
  const air = parsed.ok ? airFromJson(parsed.value.air, ['air']) : null;
  if (air !== null && !air.ok) complainOf(reader, air.reason, toFields);
  const errors = reader.errors();
  return { value: parsed.ok && Object.keys(errors).length === 0 ? parsed.value : null, errors };
}

function candidate(draft: LogDraft, reader: FieldReader, { machines, before, zone }: Context): unknown {
  const machine = machines.find(({ id }) => id === draft.machineId);
  if (machine === undefined) reader.complain('machineId', 'Choose the machine that was run.');
  const carburettors = machine?.value.machine.carburettors.length ?? 1;
  const number = (name: 'trim' | 'sizes' | 'seconds' | 'speed', example: string): number | null =>
    ifTyped(draft[name], () => reader.number({ name, text: draft[name], example })) ?? null;
  const speed = number('speed', '120');
  const cylinders = cylindersOf(draft, carburettors);
  const leanest = leanestVerdict(cylinders);
  return {
    machineId: draft.machineId,
    eventId: before?.eventId ?? null,
    run: draft.run,
    at: readTime(draft, reader, { before, zone }),
    air: readAir(draft.air, reader, 'air'),
    setting: {
      mains: readMainsText({ name: 'mains', text: draft.mains, carburettors }, reader),
      trim: machine?.value.machine.trim === undefined ? null : number('trim', '2'),
    },
    ...verdictFields(cylinders, leanest === 'lean' || leanest === 'rich' ? number('sizes', '1') : null),
    judgedBy: draft.judgedBy === 'none' ? null : draft.judgedBy,
    seconds: number('seconds', '6.42'),
    speedKmh: speed === null ? null : speedFrom(speed, speedUnit(draft.units)),
    note: draft.note,
  };
}

/** A time that nobody touched stays as it was, seconds and offset too; a touched one keeps its place's offset. */
function readTime(
  { date, clock }: LogDraft,
  reader: FieldReader,
  { before, zone }: Pick<Context, 'before' | 'zone'>,
): string | undefined {
  if (before !== null && date === before.at.slice(0, 10) && clock === before.at.slice(11, 16))
    return before.at;
  const at = fromLocal(date, clock, zone);
  if (!at.ok) {
    reader.complain(at.reason.code === 'not-a-date' ? 'date' : 'clock', clockProblemSentence(at.reason));
    return undefined;
  }
  const offset = before === null ? null : /(Z|[+-]\d{2}:?\d{2})$/i.exec(before.at)?.[0];
  return offset === null || offset === undefined
    ? isoLocal(at.value.at, zone)
    : `${date}T${clock.padStart(5, '0')}:00${offset}`;
}

function logField(path: Path): string {
  const [head, second] = path;
  if (head === 'air') return airField(path, 'air');
  if (head === 'setting') return second === 'trim' ? 'trim' : 'mains';
  if (head === 'speedKmh') return 'speed';
  if (head === 'verdicts') return 'verdict';
  return head === 'at' ? 'clock' : String(head);
}

const LABELS: Readonly<Record<string, string>> = {
  machineId: 'Machine',
  run: 'Run',
  date: 'Date',
  clock: 'Time of day',
  mains: 'Main jets',
  trim: 'Trim',
  verdict: 'Verdict',
  sizes: 'By how many sizes',
  judgedBy: 'Judged by',
  seconds: 'Time',
  speed: 'Speed',
  note: 'Note',
};

export function logLabel(name: string): string {
  return airLabel(name, 'air') ?? LABELS[name] ?? name;
}
