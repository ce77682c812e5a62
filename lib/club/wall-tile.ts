import type { WallMeasures } from './wall-pages';

/**
 * Sizes of type on a tile and on the heading of a band, in sizes of a figure; what stands before a time, in sizes of the
 * time. The style sheet has the same ones.
 */
export const WALL_TYPE = { name: 0.56, time: 1.2, before: 0.42, away: 0.6 } as const;

/** Height of a line of text in its own size; of figures, which have no tails, less. */
const LINE = 1.16;
const FIGURE_LINE = 1.08;
const PADDING = 0.4;
const GAP = 0.5;
/** So that a name stands on one line, a tile may be this much wider than its jets. */
const WIDER = 1.35;

/** Widths of texts, each in sizes of its own type. */
export type WallTexts = {
  readonly jets: readonly number[];
  readonly names: readonly { readonly whole: number; readonly longestWord: number }[];
  readonly times: readonly number[];
  readonly aways: readonly number[];
};

/** A tile that holds the widest jets and breaks no name inside a word: names take one line, or two where that is far wider. */
export function wallMeasures({ jets, names, times, aways }: WallTexts): WallMeasures {
  const widest = (widths: readonly number[], size = 1): number => Math.max(0, ...widths) * size;
  const whole = widest(
    names.map((name) => name.whole),
    WALL_TYPE.name,
  );
  const least = Math.max(
    widest(jets),
    widest(
      names.map(({ longestWord }) => longestWord),
      WALL_TYPE.name,
    ),
  );
  const lines = whole <= least * WIDER ? 1 : 2;
  // Over two lines a name breaks where a space is: a fifth more than half of it is room enough.
  const width = lines === 1 ? Math.max(least, whole) : Math.max(least, whole * 0.6);
  return {
    tileWidth: width + GAP,
    tileHeight: lines * WALL_TYPE.name * LINE + FIGURE_LINE + PADDING,
    headWidth: Math.max(widest(times, WALL_TYPE.time), widest(aways, WALL_TYPE.away)) + GAP,
  };
}
