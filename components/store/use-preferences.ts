'use client';

import { useCallback } from 'react';
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
      const stored = await opened.store.get('preferences', PREFERENCES_ID);
      const value = { ...(stored?.value ?? DEFAULT_PREFERENCES), ...change };
      // A conflict here means another tab chose a moment ago; its choice is as good.
      await opened.store.put('preferences', PREFERENCES_ID, value, stored?.revision ?? null);
    },
    [opened],
  );
  return {
    preferences: record.status === 'there' ? record.stored.value : DEFAULT_PREFERENCES,
    known: record.status !== 'opening',
    changePreferences,
  };
}
