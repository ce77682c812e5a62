import Papa from 'papaparse';
import { readPastedHours } from '@/lib/hours/paste';
import { readBackup, writeBackup } from '@/lib/store/backup-file';
import type { Snapshot } from '@/lib/store/store-type';
import { hostileTexts, LONG_TEXTS } from '@/tests/hours/hostile-text';
import { EVENING } from '@/tests/hours/pasting';
import { spoiled } from '@/tests/store/spoil';
import { trailer } from '@/tests/store/trailer';

/** The longest that reading one text may take, spoiled or hostile, beside the bare parser on the same text. */
const WANTED_MS = 50;
const FILES = 5_000;

const quantile = (sorted: readonly number[], share: number): number =>
  sorted[Math.floor(share * (sorted.length - 1))] ?? 0;

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

/** A slow time may be the fault of a busy machine: it counts only where it is slow three times. */
function fairlyTimed(work: () => unknown): number {
  const once = timed(work);
  return once < WANTED_MS / 5 ? once : Math.min(once, timed(work), timed(work));
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function report(
  name: string,
  texts: readonly string[],
  {
    ours,
    peer,
  }: {
    readonly ours: (text: string) => unknown;
    readonly peer: readonly [string, (text: string) => unknown];
  },
): void {
  for (const text of texts.slice(0, 200)) ours(text);
  const times = texts.map((text) => fairlyTimed(() => ours(text))).sort((a, b) => a - b);
  const theirs = texts.map((text) => fairlyTimed(() => peer[1](text))).sort((a, b) => a - b);
  const slowest = quantile(times, 1);
  const ratio = quantile(times, 0.5) / quantile(theirs, 0.5);
  console.log(
    `${name}: median ${quantile(times, 0.5).toFixed(3)} ms, p99 ${quantile(times, 0.99).toFixed(2)} ms, slowest ${slowest.toFixed(1)} ms (wanted: ${WANTED_MS} ms or less)`,
  );
  console.log(
    `   ${peer[0]} alone: median ${quantile(theirs, 0.5).toFixed(3)} ms, slowest ${quantile(theirs, 1).toFixed(1)} ms; ratio ${ratio.toFixed(1)} x`,
  );
  if (slowest > WANTED_MS) process.exitCode = 1;
}

/** A season in one file: every record of the test trailer many times over. */
function season(copies: number): Snapshot {
  const tables = Object.entries(trailer()).map(([table, entries]) => [
    table,
    Array.from({ length: copies }, (_, i) =>
      entries.map((entry) => ({ updatedAt: '', ...entry, revision: 1, id: `${entry.id}-${i}` })),
    ).flat(),
  ]);
  return Object.fromEntries(tables);
}

const small = writeBackup(season(1), '2027-01-16T20:00:00.000Z');
report(
  `${FILES} spoiled backups`,
  Array.from({ length: FILES }, () => spoiled(small)),
  { ours: readBackup, peer: ['JSON.parse', parsed] },
);
const paste = (text: string): unknown => readPastedHours(text, { ...EVENING, startClock: '18:00' });
report(`${FILES} hostile pastes`, hostileTexts(FILES, 17), {
  ours: paste,
  peer: ['papaparse', (text) => Papa.parse(text)],
});
report(`${LONG_TEXTS.length} long hostile pastes`, LONG_TEXTS, {
  ours: paste,
  peer: ['papaparse', (text) => Papa.parse(text)],
});

const large = writeBackup(season(100), '2027-01-16T20:00:00.000Z');
const rounds = Array.from(
  { length: 15 },
  () => [timed(() => readBackup(large)), timed(() => parsed(large))] as const,
);
const middle = (index: 0 | 1): number =>
  quantile(
    rounds.map((round) => round[index]).sort((a, b) => a - b),
    0.5,
  );
console.log(
  `a backup of a season (${(large.length / 1e6).toFixed(2)} MB): ${middle(0).toFixed(1)} ms, JSON.parse alone ${middle(1).toFixed(1)} ms, ratio ${(middle(0) / middle(1)).toFixed(1)} x`,
);
