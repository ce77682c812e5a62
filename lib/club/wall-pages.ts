/** Tiles under one heading at their side, such as everything that is due at 18:45. */
export type WallBand = {
  readonly key: string;
  readonly tiles: number;
  /** How many tiles stand beside each other, as a share of the columns: 1, or 0.5 for tiles with a sentence in them. */
  readonly share: 1 | 0.5;
  /** Shown whole over as many pages as it takes; else only where a page has room left. */
  readonly must: boolean;
};

/** Tiles `from` to `to` (not included) of a band, on one page. */
export type WallPart = { readonly key: string; readonly from: number; readonly to: number };

export type WallLayout = {
  /** Size of the type against the least one. */
  readonly scale: number;
  readonly columns: number;
  readonly pages: readonly (readonly WallPart[])[];
  /** Tiles of bands that need not be shown and found no room. */
  readonly left: number;
};

/** What is free for bands [px], and the least size of a figure [px]. */
export type WallRoom = { readonly width: number; readonly height: number; readonly figure: number };

/** How large a tile and the heading beside a band are, in sizes of a figure. */
export type WallMeasures = {
  readonly tileWidth: number;
  readonly tileHeight: number;
  readonly headWidth: number;
};

/** A wall with little on it is read from farther away; more than this looks like a mistake. */
const MOST_SCALE = 3;
const SCALE_STEP = 0.1;

/** The largest type with which everything stands on one page; where nothing does, pages at the least size. */
export function wallLayout(bands: readonly WallBand[], room: WallRoom, measures: WallMeasures): WallLayout {
  for (let scale = MOST_SCALE; scale > 1; scale -= SCALE_STEP) {
    const grid = gridAt(scale, room, measures);
    if (grid === null) continue;
    const { pages, left } = wallPages(bands, grid);
    if (pages.length <= 1 && left === 0) return { scale, columns: grid.columns, pages, left };
  }
  const grid = gridAt(1, room, measures) ?? { columns: 1, rows: 1 };
  return { scale: 1, columns: grid.columns, ...wallPages(bands, grid) };
}

export type WallGrid = { readonly columns: number; readonly rows: number };

/** null where not even one tile has room. */
function gridAt(scale: number, { width, height, figure }: WallRoom, measures: WallMeasures): WallGrid | null {
  const size = figure * scale;
  const columns = Math.floor((width - measures.headWidth * size) / (measures.tileWidth * size));
  const rows = Math.floor(height / (measures.tileHeight * size));
  return columns < 1 || rows < 1 ? null : { columns, rows };
}

/**
 * Bands in their order over pages of so many rows. A band that must be shown and would be torn starts on a page of its
 * own if it has room there; one that needs several is spread evenly.
 */
export function wallPages(
  bands: readonly WallBand[],
  { columns, rows }: WallGrid,
): Pick<WallLayout, 'pages' | 'left'> {
  const pages: WallPart[][] = [];
  let free = 0;
  let left = 0;
  for (const { key, tiles, share, must } of bands) {
    const across = Math.max(1, Math.floor(columns * share));
    const needed = Math.ceil(tiles / across);
    if (!must) {
      const shown = left > 0 ? 0 : Math.min(tiles, free * across);
      if (shown > 0) pages.at(-1)!.push({ key, from: 0, to: shown });
      free -= Math.ceil(shown / across);
      left += tiles - shown;
      continue;
    }
    let from = 0;
    if (needed > free) free = 0;
    while (from < tiles) {
      const toCome = Math.ceil((tiles - from) / across);
      if (free === 0) {
        pages.push([]);
        free = rows;
      }
      const height = Math.min(free, Math.ceil(toCome / Math.ceil(toCome / rows)));
      const to = Math.min(tiles, from + height * across);
      pages.at(-1)!.push({ key, from, to });
      free -= height;
      from = to;
      if (from < tiles) free = 0;
    }
  }
  return { pages, left };
}
