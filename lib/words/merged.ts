import type { FieldChange } from '@/lib/store/merge-leaves';
import type { RecordChange } from '@/lib/store/merge-snapshot';
import { isQuiet } from '@/lib/store/quiet';
import {
  type EventRecord,
  type LogRecord,
  TABLE_SCHEMA,
  TABLES,
  type TableName,
  type TableValue,
} from '@/lib/store/records';
import type { SetAside } from '@/lib/store/set-aside-record';
import { dateText } from './day-text';
import { listing } from './listing';
import { type AboutRecord, type FieldVoice, fieldText, labelOfField } from './merged-field';

/** What a merge does to one record: its name, and a sentence for each of its fields. */
export type MergedWords = {
  readonly key: string;
  readonly title: string;
  readonly lines: readonly string[];
};

/** What takes something away is read first: a long list shows only its beginning at once. */
const FIRST: readonly RecordChange['fate'][] = ['goes', 'stays-away', 'changed', 'new'];

/** Every change that a person would want to see before it is made; what follows by itself is not named. */
export function mergedWords(changes: readonly RecordChange[], voice: FieldVoice): readonly MergedWords[] {
  const ordered = [...changes].sort((a, b) => FIRST.indexOf(a.fate) - FIRST.indexOf(b.fate));
  return ordered.flatMap((change) => {
    const { table, id, value } = change;
    const about: AboutRecord = { table, value };
    const lines = table === 'forecasts' ? [] : linesOf(change, about, voice);
    return lines.length === 0 ? [] : [{ key: `${table}/${id}`, title: recordTitle(about, voice), lines }];
  });
}

function linesOf({ fate, fields }: RecordChange, about: AboutRecord, voice: FieldVoice): readonly string[] {
  switch (fate) {
    case 'new':
      return ['New: it comes in.'];
    case 'changed':
      return fields.filter((field) => !isQuiet(field)).map((field) => changeSentence(about, field, voice));
    case 'goes':
      return ['It was removed there. It goes, and is set aside.'];
    case 'stays-away':
      return fields.length === 0
        ? []
        : ['It was removed here, and changed there. It stays removed, and what stands there is set aside.'];
  }
}

/** "Removed here, so they stay out: Machine Blue 600, Log: Round 2 of Blue 600, 2027-01-16."; null where there are none. */
export function stayAwaySentence(changes: readonly RecordChange[], voice: FieldVoice): string | null {
  const titles = changes
    .filter(({ fate, fields }) => fate === 'stays-away' && fields.length === 0)
    .map(({ table, value }) => recordTitle({ table, value }, voice));
  if (titles.length === 0) return null;
  return `Removed here, so ${titles.length === 1 ? 'it stays' : 'they stay'} out: ${shortList(titles)}.`;
}

/** How many names stand in one sentence. */
const NAMED = 6;

const shortList = (titles: readonly string[]): string =>
  titles.length <= NAMED + 1
    ? listing(titles)
    : `${titles.slice(0, NAMED).join(', ')} and ${titles.length - NAMED} more`;

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
    return `Log: ${run || 'a run'} of ${machineName(machineId) || 'a machine that is not here'}, ${dateText(at)}`;
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
  if (path === '') {
    const whole = record ?? TABLE_SCHEMA[table].safeParse(value).data ?? null;
    const why = record === null && aside.why === 'merged' ? whyRemoved(aside) : whyAside(aside);
    return { title: recordTitle({ table, value: whole }, voice), what: 'The whole record.', why };
  }
  const about: AboutRecord = { table, value: record };
  const title = recordTitle(about, voice);
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

/** Of a record that was removed on one of two devices. */
const whyRemoved = ({ from }: SetAside): string =>
  from?.side === 'there'
    ? `It was removed here, and had been changed in ${from.name}. It stays removed until you take it back.`
    : `It was removed in ${from?.name ?? 'what was merged'}, and went from here too.`;

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
