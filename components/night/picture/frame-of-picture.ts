import type { Plan } from '@/lib/plan/types';

/** Lanes side by side on the right of a wide chart, since those of neighbouring jets overlap. */
export const LANE_COLUMNS = 3;
const WIDE = 640;

/** As it is drawn for paper, wider than on any screen: across the sheet. */
export const PAPER_WIDTH = 1020;
/** The least height there, and how much more a sheet has room for [px]. */
const [PAPER_HEIGHT, PAPER_MORE] = [165, 160] as const;
/** What a row of the figure, the sentence of a swap, of what not to race on, and other warnings take of that. */
const TAKEN = { row: 30, swap: 50, danger: 60, warnings: 140 } as const;
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
  const taken = TAKEN.row * rows + TAKEN.swap * Math.max(0, swaps.length - 1) + warnedOf(warnings);
  return PAPER_HEIGHT + Math.max(0, PAPER_MORE - taken);
}

/** Runs that no jet is rich enough for are told in one sentence; all else has a block of its own. */
function warnedOf(warnings: Plan['warnings']): number {
  if (warnings.length === 0) return 0;
  return warnings.every(({ code }) => code === 'no-jet-rich-enough') ? TAKEN.danger : TAKEN.warnings;
}

/** The temperature above it: as much as tells how it falls. */
export const TEMPERATURE_HEIGHT = 104;
