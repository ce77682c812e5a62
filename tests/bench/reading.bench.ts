import Papa from 'papaparse';
import { readPastedHours } from '@/lib/hours/paste';
import { readBackup, writeBackup } from '@/lib/store/backup-file';
import type { Snapshot } from '@/lib/store/store-type';
import { hostileTexts, LONG_TEXTS } from '@/tests/hours/hostile-text';
import { EVENING } from '@/tests/hours/pasting';
import { spoiled } from '@/tests/store/spoil';
import { trailer } from '@/tests/store/trailer';
import { ms, tell, times } from './outcome';

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
  const taken = texts.map((text) => fairlyTimed(() => ours(text))).sort((a, b) => a - b);
  const theirs = texts.map((text) => fairlyTimed(() => peer[1](text))).sort((a, b) => a - b);
  const slowest = quantile(taken, 1);
  const ratio = quantile(taken, 0.5) / quantile(theirs, 0.5);
  tell({
    what: name,
    ours: `median ${ms(quantile(taken, 0.5))}, slowest ${ms(slowest)}`,
    peer: `${peer[0]} median ${ms(quantile(theirs, 0.5))}, slowest ${ms(quantile(theirs, 1))}`,
    ratio: `${times(ratio)} as long`,
    wanted: { goal: `${WANTED_MS} ms or less`, met: slowest <= WANTED_MS },
  });
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
  `reading one of ${FILES.toLocaleString('en')} spoiled backups`,
  Array.from({ length: FILES }, () => spoiled(small)),
  { ours: readBackup, peer: ['JSON.parse', parsed] },
);
const paste = (text: string): unknown => readPastedHours(text, { ...EVENING, startClock: '18:00' });
report(`reading one of ${FILES.toLocaleString('en')} hostile pastes`, hostileTexts(FILES, 17), {
  ours: paste,
  peer: ['papaparse', (text) => Papa.parse(text)],
});
report(`reading one of ${LONG_TEXTS.length} long hostile pastes`, LONG_TEXTS, {
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
tell({
  what: `reading the backup of a season, ${(large.length / 1e6).toFixed(2)} MB`,
  ours: ms(middle(0)),
  peer: `JSON.parse ${ms(middle(1))}`,
  ratio: `${times(middle(0) / middle(1))} as long`,
  wanted: null,
});
