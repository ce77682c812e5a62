import { describe, expect, test } from 'vitest';
import { CAUTIONS, cautionsFor } from '@/lib/words/cautions';

describe('The cautions', () => {
  test.each([
    ['swap', /engine off/i],
    ['swap', /fuel tap shut/i],
    ['swap', /no flame/i],
    ['first-run', /plugs/i],
    ['indoors', /carbon monoxide/i],
    ['ice', /ice/i],
    ['model', /manual.*sanctioning body.*local rules/i],
  ] as const)('at the place %s mention %s', (place, words) => {
    expect(cautionsFor(place).some((caution) => words.test(caution))).toBe(true);
  });

  test('are all placed beside an act', () => {
    const places = [...new Set(CAUTIONS.map(({ place }) => place))];
    expect(places.flatMap((place) => cautionsFor(place))).toHaveLength(CAUTIONS.length);
  });
});
