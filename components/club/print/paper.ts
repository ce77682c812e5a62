/** What can be printed, on which paper, and its height and how many hours stand side by side. */
export const PAPERS = [
  {
    value: 'briefing-a4',
    label: 'Whole briefing, A4',
    what: 'briefing',
    heightMm: 210,
    hoursAcross: 11,
  },
  {
    value: 'briefing-letter',
    label: 'Whole briefing, Letter',
    what: 'briefing',
    heightMm: 215.9,
    hoursAcross: 10,
  },
  {
    value: 'sheet-a5',
    label: 'One sheet per racer, A5',
    what: 'sheets',
    heightMm: 210,
    hoursAcross: 0,
  },
  {
    value: 'sheet-a6',
    label: 'One sheet per racer, A6',
    what: 'sheets',
    heightMm: 148,
    hoursAcross: 0,
  },
] as const;

export type Paper = (typeof PAPERS)[number];

const MM_PER_INCH = 25.4;
/** CSS Values and Units Level 4, section 6.2: 1 in = 96 px. */
const PX_PER_INCH = 96;

export function mmToPx(mm: number): number {
  return (mm / MM_PER_INCH) * PX_PER_INCH;
}
