import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ROOT } from '@/tests/support/source-tree';

const sheets = ['app', 'components'].flatMap((folder) =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.css'))
    .map((path) => ({ path: join(folder, path), css: readFileSync(join(ROOT, folder, path), 'utf8') })),
);

/** Every question a sheet asks about the window, each alternative of it apart. */
const questions = sheets.flatMap(({ path, css }) =>
  [...css.matchAll(/@media ([^{]*)\{/g)]
    .flatMap(([, asked = '']) => asked.split(','))
    .map((asked) => ({ path, asked: asked.trim() })),
);

describe('what is printed', () => {
  it('does not follow the window: a phone prints all columns (WebKit asks the window, not the sheet)', () => {
    const windowed = questions.filter(({ asked }) => /width|height/.test(asked));
    expect(windowed.length).toBeGreaterThan(10);
    expect(windowed.filter(({ asked }) => !asked.startsWith('screen and '))).toEqual([]);
  });
});

describe('on a screen of a few lines', () => {
  /** Those that stay at the side of what rolls up and down take no line. */
  const SIDEWAYS = ['components/club/matrix/matrix.module.css'];

  it('nothing stays in place but what was just done', () => {
    const staying = sheets.filter(
      ({ css, path }) => /position: sticky/.test(css) && !SIDEWAYS.includes(path),
    );
    expect(staying.length).toBeGreaterThan(0);
    const wrong = staying.filter(
      ({ css }) => !/@media[^{]*\((max-height: 479px|min-height: 480px)\)/.test(css),
    );
    expect(wrong.map(({ path }) => path)).toEqual([]);
  });
});
