'use client';

import { useCallback } from 'react';
import { putOnTop } from '@/lib/store/change-record';
import { DEFAULT_PREFERENCES } from '@/lib/store/default-preferences';
import { PREFERENCES_ID } from '@/lib/store/preferences-id';
import type { Preferences } from '@/lib/store/records';
import { type OpenedStore, useOpening } from './store-provider';
import { useRecord } from './use-table';

/** What is chosen: which event, and which of its machines. */
export type Chosen = Pick<Preferences, 'eventId' | 'machineId'>;

/** What this page itself chose last, for each store it opened. */
const chosenBy = new WeakMap<OpenedStore, Partial<Chosen>>();

function rememberChosen(opened: OpenedStore, { eventId, machineId }: Partial<Chosen>): void {
  chosenBy.set(opened, {
    ...chosenBy.get(opened),
    ...(eventId === undefined ? {} : { eventId }),
    ...(machineId === undefined ? {} : { machineId }),
  });
}

/** Whether a choice that is shown now was made on this page. */
export function isChosenHere(opened: OpenedStore, key: keyof Chosen, value: string | null): boolean {
  return chosenBy.get(opened)?.[key] === value;
}

const PREFERENCES = { table: 'preferences', id: PREFERENCES_ID } as const;

type PreferencesState = {
  readonly preferences: Preferences;
  /** False until the store has been read: then the preferences are only the defaults. */
  readonly known: boolean;
  readonly changePreferences: (change: Partial<Preferences>) => Promise<void>;
};

export function usePreferences(): PreferencesState {
  const opening = useOpening();
  const record = useRecord('preferences', PREFERENCES_ID);
  const changePreferences = useCallback(
    async (change: Partial<Preferences>) => {
      const opened = await opening;
      rememberChosen(opened, change);
      await putOnTop(opened.store, PREFERENCES, (before) => ({
        ...DEFAULT_PREFERENCES,
        ...before,
        ...change,
      }));
      // Whoever waits for the change must find it made.
      await opened.tables.settled();
    },
    [opening],
  );
  return {
    preferences: record.status === 'there' ? record.stored.value : DEFAULT_PREFERENCES,
    known: record.status !== 'opening',
    changePreferences,
  };
}
