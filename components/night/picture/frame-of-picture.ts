import type { Plan } from '@/lib/plan/types';

/** Lanes side by side on the right of a wide chart, since those of neighbouring jets overlap. */
export const LANE_COLUMNS = 3;
const WIDE = 640;

/** As it is drawn for paper, wider than on any screen: across the sheet. */
export const PAPER_WIDTH = 1020;
/** The least height there, and how much more a sheet has room for [px]. */
const [PAPER_HEIGHT, PAPER_MORE] = [165, 160] as const;
/** What a row of the figure, the sentence of a swap and warnings take of that. */
const TAKEN = { row: 30, swap: 50, warnings: 140 } as const;
/** Rows with which all of it is left. */
const FEW_ROWS = 9;

/** Whether there is room for the lanes; where there is none they are left to the table. */
export function hasLanes(width: number): boolean {
  return width >= WIDE;
}

type Rows = Pick<Plan, 'runs' | 'swaps' | 'warnings'>;

/** Half as tall as wide, but readable on a phone and no wall on a desk; on paper as tall as the sheet has room for. */
export function chartHeight(width: number, { runs, swaps, warnings }: Rows): number {
  if (width !== PAPER_WIDTH) return Math.round(Math.min(380, Math.max(300, width * 0.45)));
  const rows = Math.max(0, runs.length + swaps.length - FEW_ROWS);
  const taken =
    TAKEN.row * rows +
    TAKEN.swap * Math.max(0, swaps.length - 1) +
    (warnings.length === 0 ? 0 : TAKEN.warnings);
  return PAPER_HEIGHT + Math.max(0, PAPER_MORE - taken);
}

/** The temperature above it: as much as tells how it falls. */
export const TEMPERATURE_HEIGHT = 104;

/** Every how many hours one is named, where not all can be. */
const EVERY = [1, 2, 3, 4, 6, 12] as const;
/** Air between the names of two hours [px]. */
const HOUR_AIR = 12;

type NamedHour = {
  /** Of the local day, so that the same hours are named every day. */
  readonly hour: number;
  /** Where its middle stands, and how wide its name is [px]. */
  readonly x: number;
  readonly width: number;
};

/** Which hours are named: every one, or every second, third and so on, as their names keep clear of each other. */
export function hoursNamed<H extends NamedHour>(hours: readonly H[], width: number): readonly H[] {
  const whole = hours.filter(({ x, width: name }) => x - name / 2 >= 0 && x + name / 2 <= width);
  const shown = EVERY.map((every) => whole.filter(({ hour }) => hour % every === 0));
  return shown.find(haveAir) ?? shown.at(-1) ?? [];
}

const haveAir = (hours: readonly NamedHour[]): boolean =>
  hours.every((hour, i) => {
    const next = hours[i + 1];
    return next === undefined || next.x - next.width / 2 - (hour.x + hour.width / 2) >= HOUR_AIR;
  });

/** Which sizes are named on an axis of this height, from the smallest up: as many as have room one over the other. */
export function sizesNamed(
  sizes: readonly number[],
  { least, most }: { readonly least: number; readonly most: number },
  { height, line }: { readonly height: number; readonly line: number },
): readonly number[] {
  const perSize = height / (most - least);
  const named: number[] = [];
  for (const size of sizes) {
    const last = named.at(-1);
    if (last === undefined || (size - last) * perSize >= line) named.push(size);
  }
  return named;
}
