import fc from 'fast-check';
import { expect, it } from 'vitest';
import { inGroups, ROWS_TOGETHER } from '@/lib/share/row-groups';

it('keeps rows in order, none alone and none in too large a group', () => {
  fc.assert(
    fc.property(fc.array(fc.integer(), { minLength: 2, maxLength: 200 }), (rows) => {
      const groups = inGroups(rows, ROWS_TOGETHER);
      expect(groups.flat()).toEqual(rows);
      for (const group of groups) {
        expect(group.length).toBeGreaterThan(1);
        expect(group.length).toBeLessThanOrEqual(ROWS_TOGETHER);
      }
    }),
  );
  expect(inGroups([], 4)).toEqual([]);
  expect(inGroups([1], 4)).toEqual([[1]]);
});
