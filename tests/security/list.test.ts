import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from '@/tests/support/source-tree';

const LINES = readFileSync(join(ROOT, 'tests', 'security', 'README.md'), 'utf8').split('\n');

type Shown = { readonly file: string; readonly title: string };

/** "`tests/x.test.ts` › title"; what stands in brackets with a file name behind the title is a remark. */
const SHOWN = /`(tests\/[\w./-]+)` › (.+?)(?: \(like every [^|]*)? *\|?$/;

const shown: readonly Shown[] = LINES.flatMap((line) => {
  const [, file, title] = SHOWN.exec(line) ?? [];
  return file === undefined || title === undefined ? [] : [{ file, title }];
});

/** A title is a text of its own, with what the test does behind the comma. */
function isThere({ file, title }: Shown): boolean {
  const text = readFileSync(join(ROOT, file), 'utf8').replaceAll("\\'", "'");
  return ["'", '"', '`'].some((quote) => text.includes(`${quote}${title}${quote},`));
}

describe('the list of security requirements', () => {
  it('names tests that exist, by file and title', () => {
    expect(shown.length).toBeGreaterThan(60);
    expect(shown.filter((each) => !isThere(each))).toEqual([]);
    expect(isThere({ file: 'tests/security/list.test.ts', title: 'a title that no test has' })).toBe(false);
  });

  it('has for every requirement a test, or says that it is by review', () => {
    const rows = LINES.filter((line) => /^\| *\d+\.\d+\.\d+/.test(line));
    expect(rows.length).toBeGreaterThan(60);
    expect(rows.filter((row) => !SHOWN.test(row) && !/by review|as above/.test(row))).toEqual([]);
  });

  it('speaks of every chapter of the standard', () => {
    const text = LINES.join('\n');
    const missing = Array.from({ length: 17 }, (_, i) => `V${i + 1}`).filter(
      (chapter) => !new RegExp(`(^## |, |^\\| )${chapter} `, 'm').test(text),
    );
    expect(missing).toEqual([]);
  });
});
