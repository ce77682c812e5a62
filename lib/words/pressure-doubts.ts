import type { MeasuredKind, PressureDoubt } from '@/lib/air/pressure-doubt';
import type { PlanWarning } from '@/lib/plan/types';
import type { UnitChoice } from '@/lib/units/choice';
import { formatElevation, formatPressure } from '@/lib/units/format';
import { pascal } from '@/lib/units/quantity';

/** What a person can answer: that the number is what it was called, or what it is instead. */
export type PressureAnswers = { readonly keep: string; readonly other: string | null };

const IT_IS: Readonly<Record<MeasuredKind, string>> = {
  station: 'It is station pressure',
  altimeter: 'It is an altimeter setting',
  'sea-level': 'It is a sea-level number',
};

export function pressureAnswers({ kind, likely }: PressureDoubt): PressureAnswers {
  if (likely === null) return { keep: 'It is right as typed', other: null };
  return { keep: IT_IS[kind], other: IT_IS[likely] };
}

/** What is odd about a pressure, as a question. `otherName` says what it was held against, where it was. */
export function pressureQuestion(
  doubt: PressureDoubt,
  units: UnitChoice,
  otherName = 'the other one',
): string {
  const { kind, number, elevation, seaLevel, likely, against } = doubt;
  const typed = formatPressure(number, units);
  const height = formatElevation(elevation, units);
  const atSea = formatPressure(seaLevel, units);
  if (against !== null && kind === 'station')
    return `${typed} as station pressure at ${height} would be ${atSea} at sea level, far from ${otherName} (${formatPressure(against, units)} at sea level). As a sea-level number it fits. Which is it?`;
  if (against !== null)
    return `${typed} as ${KIND_NAMES[kind]} is far from ${otherName} (${formatPressure(against, units)} at sea level). As station pressure at ${height} it fits. Which is it?`;
  if (likely === 'sea-level')
    return `${typed} as station pressure at ${height} would be ${atSea} at sea level, which weather hardly ever does. Is it a sea-level number, as phones, maps and airports show?`;
  if (likely === 'station')
    return `${typed} as ${KIND_NAMES[kind]} is as low as in a heavy storm. At ${height} a barometer shows that on a plain day. Is it station pressure?`;
  return `${typed} at ${height} means ${atSea} at sea level, which weather hardly ever does. Check the number and the elevation.`;
}

const KIND_NAMES: Readonly<Record<MeasuredKind, string>> = {
  station: 'station pressure',
  altimeter: 'an altimeter setting',
  'sea-level': 'a sea-level pressure',
};

/** What to do about it, where there is no button to press. */
function whatToDo({ kind, likely }: PressureDoubt): string {
  if (likely === null) return 'Confirm it, or put it right.';
  const other = likely === 'station' ? 'station pressure' : 'sea-level pressure';
  return `Confirm it as ${KIND_NAMES[kind]}, or enter it as ${other}.`;
}

export type PressureWarning = Extract<
  PlanWarning,
  {
    code:
      | 'baseline-pressure-in-doubt'
      | 'hours-pressure-in-doubt'
      | 'reading-pressure-in-doubt'
      | 'baseline-pressure-without-elevation';
  }
>;

/** A warning about a pressure's kind: where it stands, what is odd, what to do. */
export function pressureWarningSentence(warning: PressureWarning, units: UnitChoice): string {
  switch (warning.code) {
    case 'baseline-pressure-in-doubt':
    case 'hours-pressure-in-doubt':
      return `${pressureWarningQuestion(warning, units)} ${whatToDo(warning.doubt)}`;
    case 'reading-pressure-in-doubt':
      return readingSentence(warning, units);
    case 'baseline-pressure-without-elevation': {
      const proven = formatPressure(warning.pressure, units);
      return `The baseline says ${proven} and no elevation; tonight the pressure is ${formatPressure(warning.tonight, units)}. Add the elevation it was proven at. If ${proven} came from a phone, a map or an airport, enter it as sea-level pressure.`;
    }
  }
}

/** The question alone, for beside the buttons that answer it. */
export function pressureWarningQuestion(
  { code, doubt }: Extract<PressureWarning, { doubt: PressureDoubt }>,
  units: UnitChoice,
): string {
  if (code === 'baseline-pressure-in-doubt')
    return `Baseline: ${pressureQuestion(doubt, units, 'tonight’s pressure')}`;
  if (code === 'hours-pressure-in-doubt')
    return `Typed hours: ${pressureQuestion(doubt, units, 'the baseline’s pressure')}`;
  return `Reading: ${pressureQuestion(doubt, units, 'the hours')}`;
}

function readingSentence(
  warning: Extract<PressureWarning, { code: 'reading-pressure-in-doubt' }>,
  units: UnitChoice,
): string {
  const { doubt, difference } = warning;
  if (doubt.against === null) return `${pressureWarningQuestion(warning, units)} ${whatToDo(doubt)}`;
  const step = formatPressure(pascal(Math.abs(difference)), units);
  const height = formatElevation(doubt.elevation, units);
  return difference > 0
    ? `A barometer reading is ${step} higher than the hours said: just what a sea-level number is above station pressure at ${height}. Confirm it as station pressure, or enter it as sea-level pressure.`
    : `A barometer reading is ${step} lower than the hours said: just what station pressure is below a sea-level number at ${height}. One of the two is of the other kind. Check both, and confirm the reading if the barometer is right.`;
}
