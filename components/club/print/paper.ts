import { type PaperSize, type SheetPaper, type SheetsUp, sheetPaper } from '@/lib/share/sheet-paper';

/** What can be printed, on which paper. */
export type Paper =
  | {
      readonly what: 'briefing';
      readonly value: 'briefing-a4' | 'briefing-letter';
      readonly label: string;
      /** How many hours stand side by side at the most. */
      readonly hoursAcross: number;
    }
  | {
      readonly what: 'sheets';
      readonly value: `sheet-${string}`;
      readonly label: string;
      readonly paper: SheetPaper;
    };

const sheets = (value: string, label: string, size: PaperSize, up: SheetsUp): Paper => ({
  what: 'sheets',
  value: `sheet-${value}`,
  label: `One sheet per racer, ${label}`,
  paper: sheetPaper(size, up, 'upright'),
});

const BRIEFING: Paper = {
  what: 'briefing',
  value: 'briefing-a4',
  label: 'Whole briefing, A4',
  hoursAcross: 8,
};

export const PAPERS: readonly Paper[] = [
  BRIEFING,
  { what: 'briefing', value: 'briefing-letter', label: 'Whole briefing, Letter', hoursAcross: 7 },
  sheets('a4', 'A4', 'a4', 1),
  sheets('a4-2', '2 on A4, to cut', 'a4', 2),
  sheets('a4-4', '4 on A4, to cut', 'a4', 4),
  sheets('letter', 'Letter', 'letter', 1),
  sheets('letter-2', '2 on Letter, to cut', 'letter', 2),
  sheets('letter-4', '4 on Letter, to cut', 'letter', 4),
  sheets('a5', 'A5', 'a5', 1),
  sheets('a6', 'A6', 'a6', 1),
];

export function paperOf(value: string): Paper {
  return PAPERS.find((paper) => paper.value === value) ?? BRIEFING;
}
