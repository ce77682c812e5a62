import { describe, expect, it } from 'vitest';
import { nameTogether, together, unitsTogether } from '@/lib/words/together';

/** Where a line may end, shown by a bar. */
const pieces = (text: string) => together(text).replaceAll(' ', '|').replaceAll('\u00a0', ' ');

describe('what is read as one', () => {
  it.each([
    ['Do not race on 410 400 410', 'Do|not|race|on|410 400 410'],
    ['Rounds 3 to 8: lean up to 46 in 64.', 'Rounds 3|to|8:|lean|up|to|46 in 64.'],
    ['Start by 20:15. 410 400 410 goes lean', 'Start|by 20:15.|410 400 410|goes|lean'],
    ['Put in 420 410 420 420 410 420', 'Put|in|420 410 420|420 410 420'],
    ['162.5 160 162.5 is in', '162.5 160 162.5|is|in'],
    ['Leave 420, trim 3', 'Leave 420,|trim|3'],
    ['On the lake · Sat 16 Jan 2027', 'On|the|lake|·|Sat 16 Jan 2027'],
    ['410 400 410 of 10 Jan 2027', '410 400 410|of|10 Jan 2027'],
    ['Baseline 410 400 410, proven', 'Baseline|410 400 410,|proven'],
    ['No swap tonight', 'No|swap|tonight'],
  ])('stands on one line: %s', (text, expected) => {
    expect(pieces(text)).toBe(expected);
  });

  it('is the same words', () => {
    const text = 'Is 420 410 420 in? Due by 20:15: lean 21 in 64, Round 5.';
    expect(together(text).replaceAll('\u00a0', ' ')).toBe(text);
  });
});

describe('a number and its unit', () => {
  it.each([
    ['an error of 2 K, 3 K among mountains', 'an|error|of|2 K,|3 K|among|mountains'],
    ['M_a = 0.02896546 kg/mol, f ≈ 1.004 there', 'M_a = 0.02896546 kg/mol,|f ≈ 1.004|there'],
    ['were right (−0.1 ± 0.1 K)', 'were|right|(−0.1 ± 0.1 K)'],
    ['at 45 airports, 22 % of 985 hPa', 'at|45|airports,|22 %|of|985 hPa'],
  ])('stand on one line: %s', (text, expected) => {
    expect(unitsTogether(text).replaceAll(' ', '|').replaceAll('\u00a0', ' ')).toBe(expected);
  });
});

describe('a name', () => {
  it.each([
    ['Knut B Rask', 'Knut B|Rask'],
    ['K. Rask', 'K. Rask'],
    ['Team A', 'Team A'],
    ['Ilsa Vorn-Hartvik', 'Ilsa|Vorn-Hartvik'],
  ])('leaves no letter alone on a line: %s', (name, expected) => {
    expect(nameTogether(name).replaceAll(' ', '|').replaceAll('\u00a0', ' ')).toBe(expected);
  });
});
