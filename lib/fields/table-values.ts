import { isSeen } from '@/lib/contract/name-text';
import type { Path } from '@/lib/contract/problem';
import type { UnitChoice } from '@/lib/units/choice';
import { numberText } from '@/lib/units/entry-text';
import { type FieldReader, ifTyped } from './field-reader';
import type { DraftOf, FieldGroup, FieldName, FieldRow, FieldRows, FieldTable, ValuesOf } from './field-row';
import { isNumberKind, NUMBER_KINDS } from './number-kinds';
import { onlyUnits } from './only-units';
import { sharedSteps, valueAt, withValueAt } from './record-path';

type Values = Readonly<Record<string, string | boolean>>;

/** The row that a field is read and shown by under what its group holds; null where it is not asked. */
export function rowNow(group: FieldGroup, key: string, values: Values): FieldRow | null {
  const { switch: switched, asked, as, rows } = group;
  if (switched !== null && key !== switched.key && values[switched.key] !== true) return null;
  // The group was made with functions of its own values.
  if (asked[key]?.(values as never) === false) return null;
  const other = as[key];
  return other === undefined ? (rows[key] ?? null) : other(values as never);
}

/** What some rows hold before anything was typed. */
export function blankOf<R extends FieldRows>({ rows }: FieldGroup<R>): ValuesOf<R> {
  // fromEntries forgets which keys went in; they are those of the rows.
  return Object.fromEntries(Object.entries(rows).map(([key, { blank }]) => [key, blank])) as ValuesOf<R>;
}

/** A draft before anything was typed; its unit choice alone is taken, so that it keeps nothing it does not need. */
export function blankDraft<T extends FieldTable>({ top, ...groups }: T, units: UnitChoice): DraftOf<T> {
  const inside = Object.entries<FieldGroup>(groups).map(([name, group]) => [name, blankOf(group)]);
  // The same: these are the draft's own keys.
  return {
    units: onlyUnits(units),
    ...blankOf(top),
    ...Object.fromEntries(inside),
  } as DraftOf<T>;
}

function written(row: FieldRow, value: unknown, units: UnitChoice): string | boolean {
  if (value === undefined || value === null) return row.blank;
  if (row.own !== undefined) return row.own.write(value as never, units);
  if (typeof value === 'number' && isNumberKind(row.kind))
    return row.digits === undefined || row.kind !== 'percent'
      ? NUMBER_KINDS[row.kind].write(value, units)
      : numberText(value * 100, row.digits);
  return typeof value === 'boolean' ? value : String(value);
}

/** What a group holds of a record: each field as text that reads back as what is kept. */
export function valuesFrom<R extends FieldRows>(
  group: FieldGroup<R>,
  record: unknown,
  units: UnitChoice,
): ValuesOf<R> {
  const blank = blankOf(group);
  const { switch: switched, rows } = group;
  if (switched !== null && valueAt(record, switched.at) === undefined) return blank;
  const found = Object.entries(rows).map(([key, row]) => {
    if (key === switched?.key) return [key, true];
    return [key, row.at === undefined ? row.blank : written(row, valueAt(record, row.at), units)];
  });
  return Object.fromEntries(found) as ValuesOf<R>;
}

/** Which of some rows a record has a value for, and its text; null for none. */
export function kindFrom<K extends string>(
  rows: Readonly<Record<K, FieldRow<string>>>,
  record: unknown,
  units: UnitChoice,
): { readonly kind: K; readonly text: string } | null {
  for (const [kind, row] of Object.entries<FieldRow>(rows)) {
    const value = row.at === undefined ? undefined : valueAt(record, row.at);
    // The keys of `rows`, whose type entries forget.
    if (value !== undefined) return { kind: kind as K, text: String(written(row, value, units)) };
  }
  return null;
}

/** The draft that reads back as a record, as far as its rows say where they stand in it. */
export function draftFrom<T extends FieldTable>(table: T, record: unknown, units: UnitChoice): DraftOf<T> {
  const { top, ...groups } = table;
  const inside = Object.entries<FieldGroup>(groups).map(([name, group]) => [
    name,
    valuesFrom(group, record, units),
  ]);
  return {
    ...blankDraft(table, units),
    ...valuesFrom(top, record, units),
    ...Object.fromEntries(inside),
  } as DraftOf<T>;
}

/** The value of one field; undefined where there is none, with a complaint where there should be. */
export function readFieldRow(
  row: FieldRow,
  value: string | boolean,
  name: string,
  reader: FieldReader,
): unknown {
  if (typeof value === 'boolean' || row.kind === 'choice' || row.kind === 'kept')
    return value === row.none ? undefined : value;
  if (row.needed !== undefined && !isSeen(value)) reader.complain(name, row.needed);
  return row.optional === true
    ? ifTyped(value, () => readText(row, value, name, reader))
    : readText(row, value, name, reader);
}

function readText(row: FieldRow, text: string, name: string, reader: FieldReader): unknown {
  const { kind, example = '', own } = row;
  if (own !== undefined) {
    const read = own.read(text, reader.units);
    if (read.ok) return read.value;
    reader.complain(name, read.reason);
    return undefined;
  }
  if (!isNumberKind(kind)) return text;
  const shown = typeof example === 'string' ? example : example(reader.units);
  const number = reader.read(kind, { name, text, example: shown });
  const { least = -Infinity, most = Infinity, words = '' } = row.within ?? {};
  if (number === undefined || (number >= least && number <= most)) return number;
  reader.complain(name, words);
  return undefined;
}

/** The number of one field; undefined where there is none or it cannot be used. */
export function readNumberRow(
  row: FieldRow,
  text: string,
  name: string,
  reader: FieldReader,
): number | undefined {
  const value = readFieldRow(row, text, name, reader);
  return typeof value === 'number' ? value : undefined;
}

type InTable = { readonly group: FieldGroup; readonly values: Values; readonly prefix: string };

function groupsOf<T extends FieldTable>(table: T, draft: DraftOf<T>): readonly InTable[] {
  return Object.entries<FieldGroup>(table).map(([name, group]) =>
    name === 'top'
      ? { group, values: draft as Values, prefix: '' }
      : { group, values: valueAt(draft, name) as Values, prefix: `${name}.` },
  );
}

/** How a form reads some of its fields by itself, by their names. */
type OwnReaders = Readonly<Record<string, (() => unknown) | undefined>>;

/** What a group says, at its places in the record; what could not be read is missing and complained about. */
export function readGroup(
  record: object,
  { group, values, prefix }: InTable,
  reader: FieldReader,
  own: OwnReaders = {},
): object {
  const { switch: switched, rows } = group;
  if (switched !== null && values[switched.key] !== true) return record;
  const start = switched === null ? record : withValueAt(record, switched.at, {});
  return Object.keys(rows).reduce((read, key) => {
    const row = rowNow(group, key, values);
    if (row === null) return read;
    const name = `${prefix}${key}`;
    const ownValue = own[name];
    if (ownValue !== undefined) {
      const value = ownValue();
      return row.at === undefined ? read : withValueAt(read, row.at, value);
    }
    if (row.at === undefined) return read;
    return withValueAt(read, row.at, readFieldRow(row, values[key] ?? '', name, reader));
  }, start);
}

/**
 * The record as far as the draft says it, read in the order of the rows, so that complaints stand in that order too;
 * `last` are fields of the top that stand at the foot of the form.
 */
export function readFields<T extends FieldTable>(
  table: T,
  draft: DraftOf<T>,
  reader: FieldReader,
  own: { readonly [N in FieldName<T>]?: () => unknown } = {},
  last: readonly (keyof T['top']['rows'] & string)[] = [],
): object {
  const { top } = table;
  const isLast = (key: string): boolean => last.some((name) => name === key);
  const only = (wanted: (key: string) => boolean): FieldGroup => ({
    ...top,
    rows: Object.fromEntries(Object.entries(top.rows).filter(([key]) => wanted(key))),
  });
  const parts = groupsOf({ ...table, top: only((key) => !isLast(key)) }, draft);
  const foot = groupsOf({ top: only(isLast) }, draft as DraftOf<{ top: FieldGroup }>);
  return [...parts, ...foot].reduce<object>((record, part) => readGroup(record, part, reader, own), {});
}

/** The field that a place in the record was typed in; null where no row says so. */
export function fieldAt<T extends FieldTable>(table: T, draft: DraftOf<T>, path: Path): string | null {
  const near = groupsOf(table, draft).flatMap(({ group, values, prefix }) =>
    Object.keys(group.rows).map((key) => {
      const at = (rowNow(group, key, values) ?? group.rows[key])?.at;
      return { name: `${prefix}${key}`, shared: at === undefined ? 0 : sharedSteps(path, at) };
    }),
  );
  const [best] = near.filter(({ shared }) => shared > 0).sort((a, b) => b.shared - a.shared);
  return best?.name ?? null;
}

/** What the field of a name is called. */
export function fieldLabel(table: FieldTable, name: string): string {
  const [first = '', key] = name.split('.');
  const row = key === undefined ? table.top.rows[first] : table[first]?.rows[key];
  return row?.label ?? name;
}

/** What an option of a choice is called. */
export function optionLabel({ options = [] }: FieldRow, value: string): string {
  return options.find((option) => option.value === value)?.label ?? value;
}
