import type { Machine } from '@/lib/carb/machine';
import type { CardCell, CardMark } from '@/lib/trail/card';
import { formatPercent } from '@/lib/units/format';
import { turnsText } from './screw';
import { jetsText } from './settings';

/** One sign beside the number, the same on screen, in print and without colour. */
export const CARD_SIGNS: Readonly<Record<CardMark, string>> = {
  borrow: '!',
  'too-rich': '+',
  'missing-size': '°',
};

/** "410"; "472!" where it has to be borrowed. */
export function cardMainText(cell: CardCell): string {
  return `${jetsText(cardMains(cell))}${cell.mark === null ? '' : CARD_SIGNS[cell.mark]}`;
}

/**
 * The mains on the card. Of those to borrow, a size that is made where the box tells which are, else the least that
 * would do.
 */
export function cardMains({ wanted, needed, mains, mark }: CardCell): readonly number[] {
  return mark === 'borrow' ? (wanted ?? needed ?? mains) : mains;
}

/** The whole of a cell in words, for ears and for whoever points at it. */
export function cardCellSentence(cell: CardCell): string {
  const jets = jetsText(cell.mains);
  switch (cell.mark) {
    case null:
      return `Main ${jets}.`;
    case 'borrow':
      return `Not in the box: ${jetsText(cardMains(cell))} or larger; ${jets}, the richest owned, would be lean.`;
    case 'too-rich':
      return `Main ${jets}, too rich: one of ${jetsText(cell.needed ?? cell.mains)}, no smaller, would do and is not in the box.`;
    case 'missing-size':
      return `Main ${jets}; ${jetsText(cell.wanted ?? [])} would do and is not in the box.`;
  }
}

/** "¾, 45": screw turns and pilot, or a dash where no pilot was described. */
export function cardScrewText({ pilot }: CardCell, machine: Machine): string {
  if (pilot === null || machine.pilot === null) return '–';
  const end = pilot.act === 'none-left' ? endSign(pilot.logLeft) : '';
  const jet = pilot.jet === machine.pilot.jet ? '' : ` (${pilot.jet})`;
  return `${turnsText(pilot.turns, machine.pilot)}${jet}${end}`;
}

export function cardClipText({ needle }: CardCell): string {
  if (needle === null) return '–';
  return `${needle.groove}${needle.beyondNeedle ? endSign(needle.logLeft) : ''}`;
}

/** A screw or a clip at its end: still lean, or still rich. */
function endSign(logLeft: number): string {
  return logLeft < 0 ? CARD_SIGNS.borrow : CARD_SIGNS['too-rich'];
}

/** What a sign behind the screw or the clip means; null where none stands on the card. */
export function cardEndsLegend(cells: readonly CardCell[]): string | null {
  const ends = cells.some(({ pilot, needle }) => pilot?.act === 'none-left' || needle?.beyondNeedle === true);
  const signs = `${CARD_SIGNS.borrow} behind a screw or a clip: at its end and still lean; ${CARD_SIGNS['too-rich']} still rich`;
  return ends ? signs : null;
}

const LEGEND: Readonly<Record<CardMark, string>> = {
  borrow: 'not in the box and none owned is rich enough: borrow this or larger',
  'too-rich': 'the smallest owned, too rich there',
  'missing-size': 'richer than need be: the size between is not in the box',
};

/** The signs that stand on this card, explained. */
export function cardLegend(marks: readonly CardMark[]): readonly string[] {
  const order: readonly CardMark[] = ['borrow', 'missing-size', 'too-rich'];
  return order.filter((mark) => marks.includes(mark)).map((mark) => `${CARD_SIGNS[mark]} ${LEGEND[mark]}`);
}

/** How the card rounds, and how to read between its lines. */
export function cardRounding({ limits }: Machine): string {
  return `Rounded to the rich side: the smallest jet owned that is more than ${formatPercent(limits.lean, 1)} lean in at most ${formatPercent(limits.risk, 0)} of cases. Between two rows take the colder, between two columns the lower.`;
}

/** What the card leans on. */
export const CARD_LIMITS =
  'Station pressure is the standard atmosphere’s at the height, its usual weather allowed for.';
