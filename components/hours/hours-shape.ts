import { METRIC_UNITS } from '@/lib/units/choice';
import { emptyRow, type HoursDraft } from './hours-draft';

/** The shape of an hours' draft: one kept by an older version of the app does not have it and is left aside. */
export const HOURS_SHAPE: HoursDraft = {
  units: METRIC_UNITS,
  rows: [emptyRow('2027-01-16T18:00:00Z')],
  elevation: '',
  pressureKind: 'standard',
  pressure: '',
  pressureConfirmed: '',
  humidity: '',
  humidityByHour: false,
  pressureByHour: false,
  pasted: '',
  addedClock: '',
};
