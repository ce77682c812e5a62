import { describe, expect, it } from 'vitest';
import { bracketed, formulaPieces, isFormula } from '@/lib/words/formula-pieces';

describe('a formula', () => {
  it('may end a line at the spaces outside of its brackets only', () => {
    expect(formulaPieces('ln(A / A_0) = ln need + (n_p − ½) ln(p / p_0)')).toEqual([
      'ln(A / A_0)',
      '=',
      'ln',
      'need',
      '+',
      '(n_p − ½)',
      'ln(p / p_0)',
    ]);
    expect(formulaPieces('[1 − x_v (1 − M_v / M_a)]')).toEqual(['[1 − x_v (1 − M_v / M_a)]']);
  });

  it('is taken apart at its outermost brackets', () => {
    expect(bracketed('(3.8 + 0.235 · max(0, −5 − T))²')).toEqual({
      before: '(',
      inside: '3.8 + 0.235 · max(0, −5 − T)',
      after: ')²',
    });
    expect(bracketed('p_dry')).toBeNull();
    expect(bracketed('(open')).toBeNull();
  });

  it('is told from words in brackets', () => {
    expect(isFormula('mol K')).toBe(true);
    expect(isFormula('1 − k drift²')).toBe(true);
    expect(isFormula('no station has corrected it')).toBe(false);
  });
});
