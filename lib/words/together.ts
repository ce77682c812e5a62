import type { ActPart } from './settings';

const NO_BREAK = '\u00a0';
const JETS_A_LINE = 3;

/**
 * The same words, with what is read as one kept on one line: the jets of a machine (of six, three and three), a name
 * with its number ("Round 3"), a count ("5 in 64"), a date ("Sat 16 Jan 2027"), a time to be ready by ("by 20:15").
 */
export function together(text: string): string {
  return text
    .replace(/(\d) in (\d)/g, `$1${NO_BREAK}in${NO_BREAK}$2`)
    .replace(/ by (?=\d{1,2}:\d\d)/g, ` by${NO_BREAK}`)
    .replace(
      /(\d) (Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec) (?=\d{4})/g,
      `$1${NO_BREAK}$2${NO_BREAK}`,
    )
    .replace(/(^|[\s(\u00a0])(\p{Lu}\p{L}*) (?=\d+(?:\.\d+)?(?!\d|\.\d| \d))/gu, `$1$2${NO_BREAK}`)
    .replace(/\d{1,4}(?:\.\d{1,3})?(?: \d{1,4}(?:\.\d{1,3})?){1,5}/g, (jets) =>
      jets
        .split(' ')
        .map((jet, place) => `${gapBeforeJet(place)}${jet}`)
        .join(''),
    );
}

/** A person's name, a letter that stands for one part of it on the line of the part beside it: "Knut B" and "Rask". */
export function nameTogether(name: string): string {
  return name.replace(/ (?=\p{L}\.?(?:\s|$))/gu, NO_BREAK).replace(/^(\p{L}\.?) /u, `$1${NO_BREAK}`);
}

const UNIT = /([\d½¼]) (?=(?:K|Pa|hPa|kg|kg\/mol|J|m|km|ft|min|°[CF]|%)(?![\p{L}\d]))/gu;

/** The same words, a number and its unit on one line, and with them what they are the value of: "k = 2", "≈ 1.004". */
export function unitsTogether(text: string): string {
  return text
    .replace(UNIT, `$1${NO_BREAK}`)
    .replace(/ ?([=≈±]) (?=[−+]?\d)/g, (sign) => sign.replaceAll(' ', NO_BREAK));
}

/** The same piece by piece, each to stand on one line, for what is told by its exact words, as the name of a button is. */
export function wholesOf(text: string): readonly string[] {
  return together(text)
    .split(' ')
    .map((piece) => piece.replaceAll(NO_BREAK, ' '));
}

/** An act as it is set: its verb, its jets in rows as those in the engine stand, and what follows them. */
export type ActInRows = {
  readonly verb: string;
  readonly rows: readonly (readonly ActPart[])[];
  readonly rest: readonly ActPart[];
};

/** "Put in", then three jets a row; where no jet follows the verb the whole act is its verb. */
export function actInRows([verb, ...parts]: readonly ActPart[]): ActInRows {
  const isJet = ({ text }: ActPart) => /^[\d.]+$/.test(text);
  const end = parts.findIndex((part) => !isJet(part));
  const jets = end === -1 ? parts : parts.slice(0, end);
  const rows = jets
    .map((_, place) => place)
    .filter((place) => place % JETS_A_LINE === 0)
    .map((place) => jets.slice(place, place + JETS_A_LINE));
  return { verb: verb?.text ?? '', rows, rest: parts.slice(jets.length) };
}

/** What stands before a machine's jet by its place, from 0. */
function gapBeforeJet(place: number): string {
  if (place === 0) return '';
  return place % JETS_A_LINE === 0 ? ' ' : NO_BREAK;
}
