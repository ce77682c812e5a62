import type { Locator } from '@playwright/test';

/** The jets of a machine: of six, three and three. */
export const JETS = /(?<![\d.,:/])\d{2,4}(?:\.\d)?(?:[ \u00a0]\d{2,4}(?:\.\d)?){1,2}(?![\d.,:]*[\d/])/gu;
export const DATES = /\d{1,2}[ \u00a0](?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[ \u00a0]\d{4}/gu;
/** Names with a hyphen in them. */
export const HYPHENED = /\p{Lu}\p{L}*-\p{Lu}\p{L}*/gu;
export const UNITS = /\d[ \u00a0](?:K|Pa|hPa|kg|m|km|ft|°[CF]|%)(?![\p{L}\d])/gu;

/** What is read as one and stands on more than one line. In a field the browser breaks nothing. */
export function tornIn(place: Locator, ...wholes: readonly RegExp[]): Promise<readonly string[]> {
  return place.evaluate(
    (part, sources) => {
      const found: string[] = [];
      const walker = document.createTreeWalker(part, NodeFilter.SHOW_TEXT);
      const range = document.createRange();
      for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
        const text = node.nodeValue ?? '';
        if (node.parentElement?.closest('option, script, textarea') !== null) continue;
        for (const source of sources)
          for (const { 0: whole, index } of text.matchAll(new RegExp(source, 'gu'))) {
            range.setStart(node, index);
            range.setEnd(node, index + whole.length);
            const lines = [...range.getClientRects()].filter(({ width }) => width > 1);
            if (new Set(lines.map(({ top }) => Math.round(top))).size > 1)
              found.push(`${whole} in: ${text.slice(0, 80)}`);
          }
      }
      return found;
    },
    wholes.map(({ source }) => source),
  );
}
