import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { shownTexts } from '@/tests/support/shown-text';
import { ROOT } from '@/tests/support/source-tree';

/** The one word for a thing, and other words for it that would make two things of one. */
const ONE_WORD: readonly (readonly [word: string, others: RegExp])[] = [
  ['machine', /\b(sleds?|bikes?|snowmobiles?|engine profiles?)\b/i],
  ['carburettor', /\b(carburett?ers?|carburetors?|carbs?)\b/i],
  ['baseline', /\b(base ?(tune|set-?up|setting)|reference (tune|set-?up|jets?)|known good)\b/i],
  ['box', /\b(inventory|jet (kit|set|collection|assortment)s?|jets in stock)\b/i],
  ['swap', /\b(re-?jet(s|ting|ted)?|jet changes?|change-?overs?|pit stops?)\b/i],
  ['job', /\bacts?\b/i],
  ['run', /\b(sessions?|outings?|(full|test) passes)\b/i],
  ['drift', /\b(mixture (error|deviation)|AFR|lambda|air[- ]fuel ratio)\b/i],
  ['call', /\b(recommend(s|ed|ations?)?|suggest(s|ed|ions?)?|optimal settings?)\b/i],
  ['racer', /\b(users?|customers?|clients?|members?|participants?|competitors?|entrants?)\b/i],
  ['reading', /\b(observations?|observed values?|sensor values?|data points?)\b/i],
  ['hours', /\b(time ?series|forecast points?)\b/i],
  ['elevation', /(?<!density )\baltitude (of|above)\b/i],
  ['put in', /\bfit(ted)? (jets?|pilots?|mains?|it|ones)\b|\b(what|jets?|pilots?|mains?) (is|are) fitted\b/i],
  ['fix', /\bmend(s|ed|ing)?\b/i],
  ['risk', /\bchances? of (running |being |a )?lean\b/i],
  ['remove', /\btake (it )?off\b/i],
  ['part', /\b(a change of|changes of) hardware\b/i],
  ['lean and rich', /\b(too hot|overfuell?ed|underfuell?ed)\b/i],
];

/** Words of programs about themselves. They tell a racer nothing. */
const PROGRAM_WORDS =
  /\b(invalid|oops|please|sorry|unexpected error|error code|exception|undefined|payload|JSON schema|dashboard|log ?in|sign (in|up)|submit)\b/i;

const texts = shownTexts();
const where = (pattern: RegExp, spared: (text: string) => boolean = () => false) =>
  texts.filter(({ text }) => pattern.test(text) && !spared(text)).map(({ path, text }) => `${path}: ${text}`);

describe('the words on pages, on paper and in answers', () => {
  it('are found by these tests', () => {
    expect(texts.length).toBeGreaterThan(1500);
    for (const known of ['Before you touch it', 'What a swap is worth', 'Machines · Heavy Air'])
      expect(texts.map(({ text }) => text)).toContain(known);
  });

  it.each(ONE_WORD)('say %s, and no other word for it', (_, others) => {
    expect(where(others)).toEqual([]);
  });

  it('are written with one kind of ellipsis and one of apostrophe', () => {
    expect(where(/\.\.\./)).toEqual([]);
    // What the API says of itself is for programs.
    const forPeople = texts.filter(({ path }) => !/^(app\/api|lib\/contract)\//.test(path));
    expect(forPeople.filter(({ text }) => /[a-z]'[a-z]/i.test(text))).toEqual([]);
  });

  it('do not speak of the program', () => {
    expect(where(PROGRAM_WORDS)).toEqual([]);
  });

  it('name the kind of a pressure wherever a number of one is written out', () => {
    const numbers = /\d(\.\d+)? ?(inHg|hPa|mbar|kPa)\b/;
    const kinds =
      /station pressure|altimeter|sea[- ]level|barometer|QNH|standard atmosphere|weather maps|expected \d/i;
    expect(
      where(numbers, (text) => kinds.test(text) || /inHg" is accepted|^29\.92 inHg$/.test(text)),
    ).toEqual([]);
  });

  it('are the words of the README too', () => {
    const readme = readFileSync(join(ROOT, 'README.md'), 'utf8').replace(/```[\s\S]*?```/g, '');
    for (const [, others] of ONE_WORD) expect(readme.match(others)?.[0] ?? '').toBe('');
  });
});
