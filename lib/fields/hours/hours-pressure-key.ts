import type { PressureAnswer } from '@/lib/contract/pressure-answer';
import { pressureKey } from '@/lib/fields/air/pressure-key';
import type { HoursDraft } from './hours-draft';

/** All that a person stands by with an answer: kind, height, the number said once and those by the hour. */
export function hoursPressureKey(draft: Omit<HoursDraft, 'pressureConfirmed'>): string {
  const byHour = draft.pressureByHour ? draft.rows.map(({ pressure }) => pressure.trim()) : [];
  return [pressureKey(draft), ...byHour.filter((text) => text !== '')].join(' ');
}

export function areHoursConfirmed(draft: HoursDraft): boolean {
  return draft.pressureKind !== 'standard' && draft.pressureConfirmed === hoursPressureKey(draft);
}

/** The draft after an answer: all its pressures are of one kind, so they change together. */
export function answeredHours(draft: HoursDraft, answer: PressureAnswer): HoursDraft {
  const pressureKind = answer === 'stands' ? draft.pressureKind : answer;
  const answered = { ...draft, pressureKind };
  return { ...answered, pressureConfirmed: hoursPressureKey(answered) };
}
