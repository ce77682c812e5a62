import { describe, expect, it } from 'vitest';
import { nameOfQuestion, questionOfName } from '@/lib/planner/early-start';

describe('what the worker is asked by its name', () => {
  it.each([
    { now: 1_800_144_900_000, language: 'en-GB' },
    { now: 0, language: '' },
  ])('is read back: $now in "$language"', (question) => {
    expect(questionOfName(nameOfQuestion(question))).toEqual(question);
  });

  it('is nothing where it has no name', () => {
    expect(questionOfName('')).toBeNull();
  });
});
