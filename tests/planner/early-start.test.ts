import { describe, expect, it } from 'vitest';
import { nameOfQuestion, questionOfName } from '@/lib/planner/early-start';

describe('what the worker is asked by its name', () => {
  it.each([
    { now: 1_800_144_900_000, language: 'en-GB', kept: null },
    { now: 0, language: '', kept: null },
    { now: 0, language: 'de', kept: '{"name":"Lake of the  two winds "}' },
    { now: 0, language: '', kept: '{}' },
  ])('is read back: $now in "$language" of $kept', (question) => {
    expect(questionOfName(nameOfQuestion(question))).toEqual(question);
  });

  it('is nothing where it has no name', () => {
    expect(questionOfName('')).toBeNull();
  });
});
