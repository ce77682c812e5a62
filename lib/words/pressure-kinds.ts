import type { PressureKind } from '@/lib/air/air';
import { pressureEstimateSentence } from './assumptions';

type Measured = Exclude<PressureKind, 'standard'>;

/** What a number of each kind is called wherever one stands: no pressure without its kind. */
export const PRESSURE_NAMES: Readonly<Record<Measured, string>> = {
  station: 'Station pressure',
  altimeter: 'Altimeter setting',
  'sea-level': 'Sea-level pressure',
};

/** The kinds as a choice; what stands for none is for each form to add. */
export const PRESSURE_CHOICES: readonly { readonly value: Measured; readonly label: string }[] = [
  { value: 'station', label: 'Station' },
  { value: 'altimeter', label: 'Altimeter setting' },
  { value: 'sea-level', label: 'Sea level' },
];

/** Which is which, said where one is chosen. */
export const PRESSURE_MEANINGS: Readonly<Record<PressureKind, string>> = {
  standard: pressureEstimateSentence(),
  station: 'What a barometer at the track shows, not corrected for height. It falls as you climb.',
  altimeter: 'What an airport report gives (QNH), near 29.92 inHg or 1013 hPa at any height.',
  'sea-level': 'What phones and weather maps show, near 29.92 inHg or 1013 hPa at any height.',
};
