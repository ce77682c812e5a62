import type { Verdict } from '@/lib/carb/verdicts';
import type { LogRecord, Stored } from '@/lib/store/records';

export type LogFilter = {
  /** '' stands for all. */
  readonly machineId: string;
  readonly verdict: Verdict | 'none' | '';
  readonly text: string;
};

export const ALL_RUNS: LogFilter = { machineId: '', verdict: '', text: '' };

/** The entries that fit, the newest first. */
export function filteredLog(
  log: readonly Stored<LogRecord>[],
  { machineId, verdict, text }: LogFilter,
): readonly Stored<LogRecord>[] {
  const words = text
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  return log
    .filter(({ value }) => machineId === '' || value.machineId === machineId)
    .filter(({ value }) => verdict === '' || (value.verdict ?? 'none') === verdict)
    .filter(({ value }) => words.every((word) => searched(value).includes(word)))
    .sort((a, b) => Date.parse(b.value.at) - Date.parse(a.value.at));
}

function searched({ run, note, at, setting }: LogRecord): string {
  return [run, note, at, setting.mains.join('/')].join(' ').toLowerCase();
}
