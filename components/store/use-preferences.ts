'use client';

import { useCallback } from 'react';
import { putOnTop } from '@/lib/store/change-record';
import { PREFERENCES_ID } from '@/lib/store/preferences-id';
import type { Preferences } from '@/lib/store/records';
import { useOpenedStore } from './store-provider';
import { useRecord } from './use-table';

/** What holds until a person says otherwise. The same as the defaults of the stored record. */
export const DEFAULT_PREFERENCES: Preferences = {
  temperature: 'F',
  pressure: 'inHg',
  elevation: 'ft',
  theme: 'auto',
  brightness: 1,
  eventId: null,
  machineId: null,
};

const PREFERENCES = { table: 'preferences', id: PREFERENCES_ID } as const;

type PreferencesState = {
  readonly preferences: Preferences;
  /** False until the store has been read: then the preferences are only the defaults. */
  readonly known: boolean;
  readonly changePreferences: (change: Partial<Preferences>) => Promise<void>;
};

export function usePreferences(): PreferencesState {
  const opened = useOpenedStore();
  const record = useRecord('preferences', PREFERENCES_ID);
  const changePreferences = useCallback(
    async (change: Partial<Preferences>) => {
      if (opened === null) return;
      await putOnTop(opened.store, PREFERENCES, (before) => ({
        ...DEFAULT_PREFERENCES,
        ...before,
        ...change,
      }));
      // Whoever waits for the change must find it made.
      await opened.tables.settled();
    },
    [opened],
  );
  return {
    preferences: record.status === 'there' ? record.stored.value : DEFAULT_PREFERENCES,
    known: record.status !== 'opening',
    changePreferences,
  };
}
