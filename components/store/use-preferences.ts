'use client';

import { useCallback } from 'react';
import { PREFERENCES_ID } from '@/lib/store/preferences-id';
import type { Preferences } from '@/lib/store/records';
import type { Store } from '@/lib/store/store-type';
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
      await writePreferences(opened.store, change);
      // Whoever waits for the change must find it made.
      await opened.tables.refresh('preferences');
    },
    [opened],
  );
  return {
    preferences: record.status === 'there' ? record.stored.value : DEFAULT_PREFERENCES,
    known: record.status !== 'opening',
    changePreferences,
  };
}

/** Another change a moment before, here or in another tab, is no reason to lose this one. */
const TRIES = 5;

async function writePreferences(store: Store, change: Partial<Preferences>): Promise<void> {
  for (let attempt = 0; attempt < TRIES; attempt += 1) {
    const stored = await store.get('preferences', PREFERENCES_ID);
    const value = { ...(stored?.value ?? DEFAULT_PREFERENCES), ...change };
    const written = await store.put('preferences', PREFERENCES_ID, value, stored?.revision ?? null);
    if (written.ok || written.reason.code !== 'conflict') return;
  }
}
