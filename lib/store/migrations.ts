import { forecastAsAnswered } from './forecast-as-answered';

/**
 * One step from the format before to this one. `value` gets a record as the version before wrote it and answers as
 * this version writes it; it must not change what it is given. Once an app with a version has been in people's hands
 * the step is never edited again: its golden file in tests/fixtures/store holds it.
 */
export type Migration = {
  readonly version: number;
  readonly value: (table: string, value: unknown) => unknown;
};

/**
 * Version 1 is the first: there is nothing to bring along. From version 2 on a forecast is kept as our API answers it.
 * From version 3 on a record carries the trace of its fields; one without counts as older than all traces. From version
 * 4 on a removed record does too, and a file has both.
 */
export const MIGRATIONS: readonly Migration[] = [
  { version: 1, value: (_, value) => value },
  { version: 2, value: (table, value) => (table === 'forecasts' ? forecastAsAnswered(value) : value) },
  { version: 3, value: (_, value) => value },
  { version: 4, value: (_, value) => value },
];

/** The format written today: version of the database and of backup files. */
export function newestVersion(migrations: readonly Migration[] = MIGRATIONS): number {
  for (const [i, { version }] of migrations.entries())
    if (version !== i + 1) throw new Error(`migration ${version} stands in place ${i + 1}`);
  return migrations.length;
}

/** Takes a record of format `from` through every later step. */
export function migrateValue(
  record: { readonly table: string; readonly value: unknown },
  from: number,
  migrations: readonly Migration[] = MIGRATIONS,
): unknown {
  return migrations
    .filter(({ version }) => version > from)
    .reduce((value, step) => step.value(record.table, value), record.value);
}
