import { describe, expect, test } from 'vitest';
import { clockChange } from '@/lib/time/local';
import { clockChangeNote } from '@/lib/words/clock-problems';
import { at } from './plan-of';

// The dates are those of the European Union's summer time (Directive 2000/84/EC): last Sundays of March and October.
describe('In the night the clocks go back', () => {
  test('the change is told with its clock times', () => {
    const change = clockChange(at('2027-10-30T18:00:00Z'), at('2027-10-31T06:00:00Z'), 'Europe/Helsinki');
    expect(change && clockChangeNote(change, 'Europe/Helsinki')).toBe(
      'The clocks go back from 04:00 to 03:00 on 2027-10-31.',
    );
  });

  test('in spring they go forward', () => {
    const change = clockChange(at('2027-03-27T18:00:00Z'), at('2027-03-28T06:00:00Z'), 'Europe/Helsinki');
    expect(change && clockChangeNote(change, 'Europe/Helsinki')).toBe(
      'The clocks go forward from 03:00 to 04:00 on 2027-03-28.',
    );
  });
});
