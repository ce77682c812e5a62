'use client';

import { useMemo } from 'react';
import { putOnTop, type RecordKey } from '@/lib/store/change-record';
import type { TableName, TableValue } from '@/lib/store/records';
import { useOpenedStore } from './store-provider';

/**
 * Keeps what no person did, such as a forecast that came: nothing is said of it and nothing can be undone. `next` is as
 * for `putOnTop`. False where the store would not take it.
 */
export type QuietWrite = <T extends TableName>(
  key: RecordKey<T>,
  next: (current: TableValue[T] | null) => TableValue[T] | null,
) => Promise<boolean>;

/** null until the store is open. */
export function useQuietWrite(): QuietWrite | null {
  const opened = useOpenedStore();
  return useMemo(
    () => (opened === null ? null : async (key, next) => (await putOnTop(opened.store, key, next)).ok),
    [opened],
  );
}
