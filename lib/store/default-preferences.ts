import type { Preferences } from './records';

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
