import { writeFileSync } from 'node:fs';
import { writeBackup } from '@/lib/store/backup-file';
import { newestVersion } from '@/lib/store/migrations';
import type { Snapshot } from '@/lib/store/store-type';
import { trailer } from './trailer';

/**
 * Run by hand (npx tsx tests/store/write-golden.ts) when a format is new, and until it has been in people's hands;
 * never after that.
 */
const { setAside, removed, ...values } = trailer();
const tables = Object.entries(values).map(([table, entries]) => [
  table,
  entries.map((entry) => ({ updatedAt: '', ...entry, revision: 1 })),
]);
const snapshot: Snapshot = { ...Object.fromEntries(tables), removed };
writeFileSync(
  `tests/fixtures/store/backup-v${newestVersion()}.json`,
  writeBackup(snapshot, '2027-01-15T18:00:00.000Z', setAside),
);
