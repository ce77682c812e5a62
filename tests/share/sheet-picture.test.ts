import { describe, expect, it } from 'vitest';
import { type MeasureText, sheetPicture } from '@/lib/share/sheet-picture';
import type { SheetRow } from '@/lib/words/sheet-rows';

/** Every letter half as wide as it is high. */
const measure: MeasureText = (text, size) => text.length * size * 0.5;

const ROWS: readonly SheetRow[] = [
  { kind: 'title', text: 'A'.repeat(120) },
  { kind: 'lead', text: 'Start on 410. '.repeat(20).trim() },
  { kind: 'head', cells: ['Run', 'At', '°F', 'Jets', 'Lean'] },
  {
    kind: 'cells',
    cells: ['The very long final of the evening', '19:00', '−12', '410 400 410 400 410', '9/64 LEAN'],
  },
  { kind: 'small', text: 'Engine off.' },
];

describe('the picture of a sheet', () => {
  const { width, height, texts } = sheetPicture(ROWS, measure);

  it('cuts nothing off and writes nothing over another', () => {
    for (const [i, { text, x, y, size, bold }] of texts.entries()) {
      expect(x + measure(text, size, bold)).toBeLessThanOrEqual(width);
      expect(y).toBeLessThanOrEqual(height);
      for (const other of texts.slice(i + 1)) {
        const apart =
          other.y - other.size >= y - 1e-9 ||
          y - size >= other.y - 1e-9 ||
          other.x >= x + measure(text, size, bold) ||
          x >= other.x + measure(other.text, other.size, other.bold);
        expect([text, other.text, apart]).toEqual([text, other.text, true]);
      }
    }
  });

  it('holds every letter of every row', () => {
    const letters = (all: string) => [...all.replaceAll(' ', '')].sort().join('');
    const given = ROWS.flatMap((row) => ('cells' in row ? row.cells : [row.text])).join('');
    expect(letters(texts.map(({ text }) => text).join(''))).toBe(letters(given));
  });
});
