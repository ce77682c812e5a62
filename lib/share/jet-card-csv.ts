import { unparse } from 'papaparse';
import type { Machine } from '@/lib/carb/machine';
import type { JetCard } from '@/lib/trail/card';
import type { UnitChoice } from '@/lib/units/choice';
import { elevationText, temperatureText } from '@/lib/units/entry-text';
import { cardCellSentence, cardClipText, cardScrewText } from '@/lib/words/jet-card';
import { jetsText } from '@/lib/words/settings';

/** The card as a table, one line for each cell, in the person's units; lines end as RFC 4180 wants. */
export function jetCardCsv(card: JetCard, machine: Machine, units: UnitChoice): string {
  const pilot = machine.pilot === null ? [] : ['pilot', 'screw turns out'];
  const clip = machine.needle === null ? [] : ['clip groove'];
  const fields = [
    `temperature ${units.temperature}`,
    `elevation ${units.elevation}`,
    'main',
    'in the box',
    ...pilot,
    ...clip,
    'in words',
  ];
  const data = card.rows
    .flat()
    .map((cell) => [
      temperatureText(cell.temperature, units),
      elevationText(cell.elevation, units),
      jetsText(cell.mains),
      cell.mark ?? 'yes',
      ...(machine.pilot === null ? [] : [String(cell.pilot?.jet ?? ''), cardScrewText(cell, machine)]),
      ...(machine.needle === null ? [] : [cardClipText(cell)]),
      cardCellSentence(cell),
    ]);
  return `${unparse({ fields, data }, { newline: '\r\n' })}\r\n`;
}
