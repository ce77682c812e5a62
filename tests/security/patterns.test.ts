import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'vite';
import { describe, expect, it } from 'vitest';
import { latitudeText } from '@/app/api/_http/query';
import { readBoxText, readSizes } from '@/lib/carb/box-text';
import { time } from '@/lib/contract/numbers';
import { readCoordinate, readCoordinatePair } from '@/lib/fields/coordinate';
import { payloadOf } from '@/lib/share/addresses';
import { readLogCsv } from '@/lib/share/read-log-csv';
import { readRosterTable } from '@/lib/share/roster-table';
import { readChart } from '@/lib/store/read-chart';
import { readInstant } from '@/lib/time/zone';
import { US_UNITS } from '@/lib/units/choice';
import { readElevation, readPressure, readTemperature } from '@/lib/units/entry';
import { LONG_TEXTS } from '@/tests/hours/hostile-text';
import { nestedRepeats } from '@/tests/support/nested-repeats';
import { ROOT, sourceFiles } from '@/tests/support/source-tree';

/** Every regular expression written in a file. */
function patternsIn(path: string): readonly string[] {
  const found: string[] = [];
  const search = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    if ('regex' in node && typeof node.regex === 'object' && node.regex !== null && 'pattern' in node.regex)
      found.push(String(node.regex.pattern));
    for (const part of Object.values(node)) search(part);
  };
  search(parseSync(path, readFileSync(join(ROOT, path), 'utf8')).program);
  return found;
}

describe('a pattern with a repeat inside a repeat', () => {
  it.each([
    ['(a+)+', 1],
    ['(a|b*)*c', 1],
    ['(?:\\d{2,}x)*', 1],
    ['((a{1,})b)+', 1],
    ['(\\d+)(a+)', 0],
    ['[(a+)+]', 0],
    ['\\(a+\\)+', 0],
    ['(?:ab)+', 0],
    ['(?:a{1,3}){2,4}', 0],
    ['(?:a+){0,3}', 0],
    ['(?<!\\d)(?:x)*', 0],
  ])('is found by the search of these tests in %s: %i', (pattern, count) => {
    expect(nestedRepeats(pattern)).toHaveLength(count);
  });

  it('could search for years, and none is written in the product', () => {
    const files = ['lib', 'app', 'components'].flatMap((folder) => sourceFiles(folder));
    const patterns = files.flatMap(({ path }) => patternsIn(path).map((pattern) => ({ path, pattern })));
    expect(patterns.length).toBeGreaterThan(80);
    expect(patterns.filter(({ pattern }) => nestedRepeats(pattern).length > 0)).toEqual([]);
  });
});

/** Everything that reads text of somebody else's by patterns; pasted hours have such a test of their own. */
const READERS: Readonly<Record<string, (text: string) => unknown>> = {
  'a number in an address': (text) => latitudeText.safeParse(text),
  'a time in a body': (text) => time.safeParse(text),
  'a moment': readInstant,
  'a temperature': (text) => readTemperature(text, 'F'),
  'a pressure': (text) => readPressure(text, 'inHg'),
  'an elevation': (text) => readElevation(text, 'ft'),
  'a box': readBoxText,
  'jets in their order': readSizes,
  'a chart': (text) => readChart(text, 'grid', US_UNITS),
  'a coordinate': (text) => readCoordinate(text, 'latitude'),
  'a pair of coordinates': readCoordinatePair,
  'a link': payloadOf,
  'a roster': (text) => readRosterTable(text, { units: US_UNITS, elevationM: 250 }),
  'a log': (text) => readLogCsv(text, []),
};

describe('a text that makes careless patterns search for ages', () => {
  it.each(Object.entries(READERS))('is read or refused as %s without a search that never ends', (_, read) => {
    for (const text of [...LONG_TEXTS, `${'1'.repeat(99_000)}x`, `${'1.'.repeat(49_000)}x`])
      expect(read(text)).not.toBeUndefined();
  });
});
