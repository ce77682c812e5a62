import type { FieldChange } from '@/lib/store/merge-leaves';
import { isQuiet } from '@/lib/store/merge-record';
import type { RecordChange } from '@/lib/store/merge-snapshot';
import {
  type EventRecord,
  type LogRecord,
  TABLES,
  type TableName,
  type TableValue,
} from '@/lib/store/records';
import type { SetAside } from '@/lib/store/set-aside-record';
import { type AboutRecord, type FieldVoice, fieldText, labelOfField } from './merged-field';

/** What a merge does to one record: its name, and a sentence for each of its fields. */
export type MergedWords = {
  readonly key: string;
  readonly title: string;
  readonly lines: readonly string[];
};

/** Every change that a person would want to see before it is made; what follows by itself is not named. */
export function mergedWords(changes: readonly RecordChange[], voice: FieldVoice): readonly MergedWords[] {
  return changes.flatMap(({ table, id, value, isNew, fields }) => {
    const about: AboutRecord = { table, value };
    const told = fields.filter((field) => !isQuiet(field));
    if (table === 'forecasts' || (!isNew && told.length === 0)) return [];
    const lines = isNew ? ['New: it comes in.'] : told.map((field) => changeSentence(about, field, voice));
    return [{ key: `${table}/${id}`, title: recordTitle(about, voice), lines }];
  });
}

function changeSentence(
  about: AboutRecord,
  { path, how, here, there }: FieldChange,
  voice: FieldVoice,
): string {
  const label = labelOfField(about, path, voice);
  const [mine, theirs] = [here, there].map((value) => fieldText(about, path, value, voice) ?? null);
  switch (how) {
    case 'added':
      return theirs === null ? `${label} comes in.` : `${label}: ${theirs} comes in.`;
    case 'changed':
      return mine === null || theirs === null || mine === theirs
        ? `${label} is newer there and comes in.`
        : `${label}: ${mine} → ${theirs}.`;
    case 'removed':
      return `${label}: ${mine ?? 'what is here'} was taken out there. It goes, and is set aside.`;
    case 'kept':
      return `${label}: ${bothChanged(mine, theirs)} is set aside.`;
    case 'taken':
      return `${label}: ${bothChanged(theirs, mine)} is set aside.`;
  }
}

const bothChanged = (stays: string | null | undefined, goes: string | null | undefined): string =>
  stays == null || goes == null || stays === goes
    ? 'two versions that did not know of each other. One stands; the other'
    : `two versions that did not know of each other. ${stays} stands; ${goes}`;

const KINDS: Readonly<Record<TableName, string>> = {
  machines: 'Machine',
  boxes: 'Box',
  events: 'Night',
  log: 'Log',
  forecasts: 'Forecast',
  comparisons: 'Comparison',
  preferences: 'Settings',
};

/** "Machine Blue 600", "Log: Round 2 of Blue 600, 2027-01-16". */
function recordTitle({ table, value }: AboutRecord, { machineName }: FieldVoice): string {
  if (value === null) return KINDS[table];
  if (table === 'log') {
    const { run, machineId, at } = value as LogRecord;
    return `Log: ${run || 'a run'} of ${machineName(machineId) || 'a machine that is not here'}, ${at.slice(0, 10)}`;
  }
  const name = nameOf(value);
  return name === '' ? KINDS[table] : `${KINDS[table]} ${name}`;
}

function nameOf(value: TableValue[TableName]): string {
  if ('machine' in value) return value.machine.name;
  if ('event' in value) return (value as EventRecord).event.name;
  return 'name' in value ? value.name : '';
}

/** Something set aside, as a person reads it. */
export type SetAsideWords = { readonly title: string; readonly what: string; readonly why: string };

export function setAsideWords(
  aside: SetAside,
  record: TableValue[TableName] | null,
  voice: FieldVoice,
): SetAsideWords {
  const { table, path = '', text } = aside;
  if (!isTable(table))
    return { title: 'A record of a kind this version does not know', what: '', why: whyAside(aside) };
  const value = parsed(text);
  const about: AboutRecord = { table, value: record };
  const title = recordTitle(about, voice);
  if (path === '') return { title, what: 'The whole record.', why: whyAside(aside) };
  const said = fieldText(about, path, value, voice);
  const label = labelOfField(about, path, voice);
  return { title, what: said === null ? `${label}.` : `${label}: ${said}.`, why: whyAside(aside) };
}

const isTable = (name: string): name is TableName => TABLES.some((table) => table === name);

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function whyAside({ why, from, issues }: SetAside): string {
  switch (why) {
    case 'damaged':
      return `It could not be read${issues[0] === undefined ? '' : ` (${issues[0].path})`}. Save it as a file before you let it go.`;
    case 'changed-twice':
      return 'It was changed here while nothing could be kept, and in another tab too. The other one stands.';
    case 'merged':
      return from?.side === 'there'
        ? `It came with ${from.name}; what was here stands.`
        : `It stood here before ${from?.name ?? 'the merge'} came in.`;
  }
}
