import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type WallBand, wallLayout, wallPages } from '@/lib/club/wall-pages';
import { wallMeasures } from '@/lib/club/wall-tile';

const band = (tiles: number, given: Partial<WallBand> = {}): WallBand => ({
  key: 'a',
  tiles,
  share: 1,
  must: true,
  ...given,
});

const BANDS = fc
  .array(
    fc.record({
      tiles: fc.integer({ min: 1, max: 120 }),
      share: fc.constantFrom(1 as const, 0.5 as const),
      must: fc.boolean(),
    }),
    { minLength: 1, maxLength: 8 },
  )
  .map((bands) => bands.map((each, i): WallBand => ({ ...each, key: `band ${i}` })));
const GRID = fc.record({ columns: fc.integer({ min: 1, max: 9 }), rows: fc.integer({ min: 1, max: 12 }) });

describe('pages of the wall', () => {
  it('show every tile that must be shown once, in order, and count the others', () => {
    fc.assert(
      fc.property(BANDS, GRID, (bands, grid) => {
        const { pages, left } = wallPages(bands, grid);
        const shown = (key: string) =>
          pages
            .flat()
            .filter((part) => part.key === key)
            .flatMap(({ from, to }) => Array.from({ length: to - from }, (_, i) => from + i));
        for (const { key, tiles, must } of bands) {
          const each = shown(key);
          expect(each).toEqual(each.map((_, i) => i));
          if (must) expect(each).toHaveLength(tiles);
        }
        const all = bands.reduce((sum, { tiles }) => sum + tiles, 0);
        expect(pages.flat().reduce((sum, { from, to }) => sum + to - from, 0) + left).toBe(all);
      }),
    );
  });

  it('hold no more rows than there is room for, and none is empty', () => {
    fc.assert(
      fc.property(BANDS, GRID, (bands, { columns, rows }) => {
        for (const page of wallPages(bands, { columns, rows }).pages) {
          const used = page.reduce((sum, { key, from, to }) => {
            const { share } = bands.find((each) => each.key === key)!;
            return sum + Math.ceil((to - from) / Math.max(1, Math.floor(columns * share)));
          }, 0);
          expect(used).toBeGreaterThan(0);
          expect(used).toBeLessThanOrEqual(rows);
        }
      }),
    );
  });

  it('spread what takes several pages evenly', () => {
    // 32 jobs of one moment on a wall of 4 by 7: two pages of 16, not 28 and 4.
    expect(wallPages([band(32)], { columns: 4, rows: 7 }).pages).toEqual([
      [{ key: 'a', from: 0, to: 16 }],
      [{ key: 'a', from: 16, to: 32 }],
    ]);
  });

  it('leave out what comes later rather than open a page for it, and nothing after what was left out', () => {
    const later = (key: string, tiles: number) => band(tiles, { key, must: false });
    const { pages, left } = wallPages([band(5), later('b', 9), later('c', 1)], { columns: 2, rows: 5 });
    expect(pages).toEqual([
      [
        { key: 'a', from: 0, to: 5 },
        { key: 'b', from: 0, to: 4 },
      ],
    ]);
    expect(left).toBe(6);
  });
});

describe('the type of the wall', () => {
  const measures = { tileWidth: 6, tileHeight: 2, headWidth: 4 };
  const room = { width: 1860, height: 800, figure: 54 };

  it('is as large as one page allows, and never smaller than told', () => {
    const alone = wallLayout([band(1)], room, measures);
    expect(alone.scale).toBe(3);
    const crowd = wallLayout([band(100)], room, measures);
    expect(crowd.scale).toBe(1);
    // By hand: (1860 - 4 * 54) / (6 * 54) = 5.07 columns, 800 / (2 * 54) = 7.4 rows.
    expect(crowd.columns).toBe(5);
    expect(crowd.pages).toHaveLength(3);
  });

  it('does not grow on a second page', () => {
    const { scale, pages } = wallLayout([band(20)], room, measures);
    expect(pages).toHaveLength(1);
    const size = 54 * (scale + 0.1);
    const grid = {
      columns: Math.floor((1860 - 4 * size) / (6 * size)),
      rows: Math.floor(800 / (2 * size)),
    };
    expect(wallPages([band(20)], grid).pages.length).toBeGreaterThan(1);
  });
});

describe('a tile', () => {
  const name = (whole: number, longestWord = whole) => ({ whole, longestWord });

  it('is as wide as the widest jets and the longest word, whatever the name is', () => {
    const { tileWidth } = wallMeasures({ jets: [2], names: [name(30, 20)], times: [], aways: [] });
    // Type of a name is 0.56 of a figure.
    expect(tileWidth).toBeGreaterThanOrEqual(20 * 0.56);
    expect(wallMeasures({ jets: [9], names: [name(3)], times: [], aways: [] }).tileWidth).toBeGreaterThan(9);
  });

  it('gives a name that is far wider than the jets a second line', () => {
    const one = wallMeasures({ jets: [5], names: [name(10, 6)], times: [], aways: [] });
    const two = wallMeasures({ jets: [5], names: [name(16, 6)], times: [], aways: [] });
    expect(two.tileHeight).toBeGreaterThan(one.tileHeight + 0.56);
  });
});
