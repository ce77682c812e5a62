import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PAPER } from '@/components/shell/paper';
import { hexOfOklch } from '@/tests/support/oklch';
import { ROOT } from '@/tests/support/source-tree';

const textOf = (path: string) => readFileSync(join(ROOT, path), 'utf8');
const COLOUR = /#[0-9a-f]{3,8}\b|\b(?:rgb|hsl|hwb|lab|lch|oklab|oklch)a?\(/i;

/** Where a colour may be written out: the one list, and what is printed or scanned and keeps to no theme. */
const WRITTEN_OUT = [
  'app/globals.css',
  'components/paper/paper.module.css',
  'components/shell/paper.ts',
  'components/share/qr-code.tsx',
  'components/club/send/sheet-pictures.tsx',
];

describe('colours', () => {
  it('are written once, in app/globals.css', () => {
    const files = ['app', 'components'].flatMap((folder) =>
      readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' }).map(
        (path) => `${folder}/${path}`,
      ),
    );
    const wrong = files
      .filter((path) => /\.(css|tsx?)$/.test(path) && !WRITTEN_OUT.includes(path))
      .filter((path) =>
        COLOUR.test(path.endsWith('.css') ? textOf(path) : (textOf(path).match(/'#[^']*'/g) ?? []).join(' ')),
      );
    expect(wrong).toEqual([]);
  });

  it('of the ground are those that the browser is told', () => {
    const [, day = '', night = ''] =
      /--paper: light-dark\((oklch\([^)]+\)), (oklch\([^)]+\))\)/.exec(textOf('app/globals.css')) ?? [];
    expect(PAPER).toEqual({ day: hexOfOklch(day), night: hexOfOklch(night) });
  });
});
