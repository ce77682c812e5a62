import type { TemperatureUnit } from '@/lib/units/choice';
import { type PaperSize, type SheetPaper, type SheetsUp, sheetPaper } from './sheet-paper';

/** A way to print the jet card. */
export type CardPaper = {
  readonly value: string;
  readonly label: string;
  readonly paper: SheetPaper;
  /** The same card as often as the page has room for it: one for each jacket. */
  readonly copies: number;
};

function cardPaper(size: PaperSize, up: SheetsUp, label: string): CardPaper {
  return { value: `${size}-${up}`, label, paper: sheetPaper(size, up, 'across'), copies: up };
}

export const CARD_PAPERS: readonly CardPaper[] = [
  cardPaper('a4', 4, '4 pocket cards on A4, to cut'),
  cardPaper('a4', 2, '2 cards on A4, to cut'),
  cardPaper('a4', 1, 'Full page, A4'),
  cardPaper('letter', 4, '4 pocket cards on Letter, to cut'),
  cardPaper('letter', 2, '2 cards on Letter, to cut'),
  cardPaper('letter', 1, 'Full page, Letter'),
  cardPaper('a6', 1, 'Pocket card, A6'),
];

/** The chosen one; else the pocket cards on the paper that goes with a unit: where °F is read, paper is Letter. */
export function cardPaperOf(value: string, unit: TemperatureUnit): CardPaper {
  const usual = unit === 'F' ? 'letter-4' : 'a4-4';
  const find = (wanted: string) => CARD_PAPERS.find((each) => each.value === wanted);
  return find(value) ?? find(usual) ?? CARD_PAPERS[0]!;
}
