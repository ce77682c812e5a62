/** A part of a drawing in pixels; y grows downwards, as on a screen. */
export type Patch = {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
};
export type PixelSpot = { readonly x: number; readonly y: number };
export type Polyline = readonly PixelSpot[];

/** What words must not lie on. */
export type Behind = { readonly lines: readonly Polyline[]; readonly boxes: readonly Patch[] };

export type WordsToPlace = {
  /** The words to be written; the shorter ones after them are for where those have no room. */
  readonly words: readonly string[];
  /** Size of their type. */
  readonly size: number;
  /** Where words so wide may begin: the left end of their foot, and what speaks against it. */
  readonly places: (width: number) => readonly WordsPlace[];
  /** What they never lie on. */
  readonly drawn: Behind;
  /** What they had better not lie on. */
  readonly light: readonly Polyline[];
};

export type WordsPlace = PixelSpot & { readonly cost: number };

export type PlacedWords = PixelSpot & { readonly words: string };

/** Shares of the size of type that letters reach over their foot and under it. */
const [TALL, DEEP] = [0.76, 0.2] as const;
/** Air around words: their outline, and half of a thick line. */
const AIR = 5;
/** What speaks against words on a light line. */
const LIGHT_COST = 50;

/** What words take when they begin there. */
export function boxOfWords({ x, y }: PixelSpot, width: number, size: number): Patch {
  return { left: x, right: x + width, top: y - TALL * size, bottom: y + DEEP * size };
}

/**
 * A place for each, one after the other, so that none lies on what is drawn, on another, or out of the plot; null where
 * even the shortest words have no place at all.
 */
export function freePlaces(
  wanted: readonly WordsToPlace[],
  plot: Patch,
  widthOf: (words: string, size: number) => number,
): readonly (PlacedWords | null)[] {
  const taken: Patch[] = [];
  return wanted.map(({ words, size, places, drawn, light }) => {
    for (const text of words) {
      const width = widthOf(text, size);
      const found = places(width)
        .map(({ x, y, cost }) => ({ x, y, cost, box: boxOfWords({ x, y }, width, size) }))
        .filter(
          ({ box }) =>
            isWithin(box, plot) && isFree(box, drawn) && !taken.some((other) => isOver(wider(box), other)),
        )
        .map((each) => (light.some((line) => isCrossed(each.box, line)) ? dearer(each) : each));
      const [best] = found.sort((a, b) => a.cost - b.cost);
      if (best === undefined) continue;
      taken.push(best.box);
      return { x: best.x, y: best.y, words: text };
    }
    return null;
  });
}

const dearer = <P extends { readonly cost: number }>(place: P): P => ({
  ...place,
  cost: place.cost + LIGHT_COST,
});

const isWithin = (box: Patch, plot: Patch): boolean =>
  box.left >= plot.left && box.right <= plot.right && box.top >= plot.top && box.bottom <= plot.bottom;

const isFree = (box: Patch, { lines, boxes }: Behind): boolean =>
  !boxes.some((other) => isOver(box, other)) && !lines.some((line) => isCrossed(wider(box), line));

const wider = ({ left, right, top, bottom }: Patch): Patch => ({
  left: left - AIR,
  right: right + AIR,
  top: top - AIR,
  bottom: bottom + AIR,
});

const isOver = (a: Patch, b: Patch): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Whether a line goes through a box. */
export function isCrossed(box: Patch, line: Polyline): boolean {
  return line.some((to, i) => {
    const from = line[i - 1];
    return from !== undefined && goesThrough(box, from, to);
  });
}

/** A piece of a line is cut to what lies between left and right, and then between top and bottom. */
function goesThrough({ left, right, top, bottom }: Patch, from: PixelSpot, to: PixelSpot): boolean {
  const inX = shareWithin(from.x, to.x, left, right);
  const inY = shareWithin(from.y, to.y, top, bottom);
  return Math.max(inX[0], inY[0]) < Math.min(inX[1], inY[1]);
}

/** From which share of the way to which a coordinate lies within bounds; the end before the beginning where it never does. */
function shareWithin(from: number, to: number, least: number, most: number): readonly [number, number] {
  const way = to - from;
  if (way === 0) return from > least && from < most ? [0, 1] : [1, 0];
  const [a, b] = [(least - from) / way, (most - from) / way];
  return [Math.max(0, Math.min(a, b)), Math.min(1, Math.max(a, b))];
}
