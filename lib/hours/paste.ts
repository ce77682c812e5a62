import { fail, ok, type Result } from '@/lib/result/result';
import { addDays, fromLocal } from '@/lib/time/local';
import { zoneExists } from '@/lib/time/zone';
import { humidityScaleOf, pressureUnitOf } from './paste-cells';
import { findColumns, type PastedColumns } from './paste-columns';
import { cellsOf, type LineMoment, pastedMoments, questionsOf } from './paste-questions';
import { type PasteReading, readRows } from './paste-rows';
import { cutTable, type PastedTable } from './paste-table';
import { countHours, type LineTime, placeTimes, runsBackwards } from './paste-times';
import { dayOrderFor, understoodOf } from './paste-understood';
import type { PastedHours, PasteOptions, PasteProblem, SkippedLine } from './pasted';

/** A month of hours with all their columns fits. */
const MOST_CHARACTERS = 100_000;

function optionProblem({ zone, date, startClock }: PasteOptions): PasteProblem | null {
  if (!zoneExists(zone)) return { code: 'unknown-zone', zone };
  if (addDays(date, 0) === null) return { code: 'not-a-date', text: date };
  if (startClock === undefined) return null;
  const start = fromLocal(date, startClock, zone);
  return start.ok || start.reason.code === 'missing-hour' ? null : { code: 'not-a-clock', text: startClock };
}

function timesOf(
  moments: readonly LineMoment[] | null,
  options: PasteOptions,
  count: number,
): readonly LineTime[] {
  const { date, zone, startClock = '', clock = '24-hour' } = options;
  if (moments !== null)
    return placeTimes(moments, { date, zone, clock, dayOrder: dayOrderFor(moments, options) ?? 'day-first' });
  const start = fromLocal(date, startClock, zone);
  if (start.ok) return countHours(start.value.at, count);
  return start.reason.code === 'missing-hour' ? countHours(start.reason.change.at, count) : [];
}

function aboveHeader({ lines }: PastedTable, { headerAt }: PastedColumns): readonly SkippedLine[] {
  return lines
    .slice(0, headerAt ?? 0)
    .map(({ line, cells }) => ({ line, text: cells.join(' ').trim(), reason: 'above-header' as const }))
    .filter(({ text }) => text !== '');
}

/**
 * Reads hours pasted from a spreadsheet, a mail or a file. Every usual separator, decimal mark, unit sign and clock is
 * known, a header may have any order and cells may be missing; one column of temperatures from a given hour on will do
 * too. Where the text can be read in two ways it asks; every line that gives no hour is handed back with the reason.
 */
export function readPastedHours(text: string, options: PasteOptions): Result<PastedHours, PasteProblem> {
  const wrong = optionProblem(options);
  if (wrong !== null) return fail(wrong);
  if (text.trim() === '') return fail({ code: 'empty' });
  if (text.length > MOST_CHARACTERS) return fail({ code: 'too-long', limit: MOST_CHARACTERS });
  const cut = cutTable(text, options.commaIs);
  if (!cut.ok) return cut;
  const table = cut.value;
  const found = findColumns(table, options.columns);
  const data = table.lines.slice(found.dataFrom);
  const questions = questionsOf(table, found, data, options);
  if (questions.length > 0) return fail({ code: 'ask', questions });
  const cells = cellsOf(data, found);
  const moments = pastedMoments(cells);
  if (cells('temperature').length === 0) return fail({ code: 'no-temperature-column' });
  if (moments !== null && runsBackwards(moments)) return fail({ code: 'times-run-backwards' });
  const scale = options.humidityScale ?? humidityScaleOf(cells('humidity'));
  const reading: PasteReading = {
    data,
    columns: found.columns,
    times: timesOf(moments, options, data.length),
    temperatureUnit: options.temperatureUnit,
    pressureUnit: pressureUnitOf(cells('pressure'), options.pressureUnit),
    humidityScale: scale === 'ratio' ? 'ratio' : 'percent',
  };
  const rows = readRows(reading);
  if (!rows.ok) return rows;
  return ok({
    ...rows.value,
    skipped: [...aboveHeader(table, found), ...rows.value.skipped],
    understood: understoodOf(table, found, { reading, moments, options }),
  });
}
