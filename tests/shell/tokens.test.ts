import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { hexOfOklch } from '@/tests/support/oklch';

const css = readFileSync(join(process.cwd(), 'app', 'globals.css'), 'utf8');

/** The two values of a `light-dark()` token, in sRGB. */
function token(name: string): { readonly day: string; readonly night: string } {
  const other = new RegExp(`--${name}: var\\(--([\\w-]+)\\)`).exec(css)?.[1];
  if (other !== undefined) return token(other);
  const match = new RegExp(`--${name}: light-dark\\((oklch\\([^)]+\\)), (oklch\\([^)]+\\))\\)`).exec(css);
  if (match === null) throw new Error(`no token --${name}`);
  return { day: hexOfOklch(match[1] ?? ''), night: hexOfOklch(match[2] ?? '') };
}

/** WCAG 2.2, "relative luminance". */
function luminance(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** WCAG 2.2, "contrast ratio". */
function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

const THEMES = ['day', 'night'] as const;

/** What a red filter before the screen, put there at night to spare the eyes, lets through. */
const onlyRed = (colour: string): string => `${colour.slice(0, 3)}0000`;

describe('the tokens', () => {
  it('know how to count: black on white is 21, and #767676 on white is the 4.54 of the textbooks', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });

  it('are read as CSS Color 4 reads them: its own examples of oklch() are green #008000 and white', () => {
    // From memory: the module's first example of the notation is oklch(51.975% 0.17686 142.495), "green".
    expect(hexOfOklch('oklch(51.975% 0.17686 142.495)')).toBe('#008000');
    expect(hexOfOklch('oklch(100% 0 0)')).toBe('#ffffff');
  });

  it.each(['ink', 'ink-2', 'lean', 'rich', 'danger', 'focus', 'mark', 'fresh', 'ageing'])(
    '--%s can be read on paper and on the second paper, by day and by night (WCAG 2.2, 1.4.3: 4.5)',
    (name) => {
      for (const theme of THEMES) {
        expect(contrast(token(name)[theme], token('paper')[theme])).toBeGreaterThanOrEqual(4.5);
        expect(contrast(token(name)[theme], token('paper-2')[theme])).toBeGreaterThanOrEqual(4.5);
      }
    },
  );

  it.each(['lean', 'rich'])('words on --%s can be read', (name) => {
    for (const theme of THEMES)
      expect(contrast(token(`${name}-ink`)[theme], token(name)[theme])).toBeGreaterThanOrEqual(4.5);
  });

  it('draws lines that can be seen (WCAG 2.2, 1.4.11: 3)', () => {
    for (const theme of THEMES)
      expect(contrast(token('line')[theme], token('paper')[theme])).toBeGreaterThanOrEqual(3);
  });

  it.each(['lean', 'rich', 'ink', 'mark'])(
    '--%s can be seen by night under a red filter, in words and hatches (WCAG 2.2, 1.4.11: 3)',
    (name) => {
      expect(contrast(onlyRed(token(name).night), onlyRed(token('paper').night))).toBeGreaterThanOrEqual(3);
    },
  );

  it.each(['lean', 'rich'])('words on --%s can be read by night under a red filter', (name) => {
    const [ink, ground] = [token(`${name}-ink`).night, token(name).night];
    expect(contrast(onlyRed(ink), onlyRed(ground))).toBeGreaterThanOrEqual(3);
  });

  it('point at nothing in a hue near that of a side of the mixture', () => {
    const hues = (name: string) =>
      [...(new RegExp(`--${name}: light-dark\\((.+)\\);`).exec(css)?.[1] ?? '').matchAll(/ ([\d.]+)\)/g)].map(
        ([, hue]) => Number(hue),
      );
    const apart = (a = 0, b = 0): number => Math.min(Math.abs(a - b), 360 - Math.abs(a - b));
    for (const side of ['lean', 'rich'])
      for (const theme of [0, 1])
        expect(apart(hues('mark')[theme], hues(side)[theme])).toBeGreaterThanOrEqual(60);
  });

  it('are read on the grounds that the style sheets put them on (WCAG 2.2, 1.4.3: 4.5), and no other one is words', () => {
    const pairs = pairsInSheets();
    expect(pairs.length).toBeGreaterThan(40);
    const faint = pairs.flatMap(({ where, ink, ground }) =>
      THEMES.filter((theme) => contrast(token(ink)[theme], token(ground)[theme]) < 4.5).map(
        (theme) => `${where}: --${ink} on --${ground} by ${theme}`,
      ),
    );
    expect(faint).toEqual([]);
  });
});

type Pair = { readonly where: string; readonly ink: string; readonly ground: string };

/** Every rule of every style sheet that gives words a colour: on the ground it brings itself, else on both papers. */
function pairsInSheets(): readonly Pair[] {
  const sheets = readdirSync('components', { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('.css'),
  );
  return sheets.flatMap((sheet) => {
    const text = readFileSync(join('components', sheet), 'utf8').replace(/\/\*[\s\S]*?\*\//g, '');
    return [...text.matchAll(/([^{}]+)\{([^{}]*)\}/g)].flatMap(([, selector = '', body = '']) => {
      const ink = /(?:^|[\s;])(?:color|fill): var\(--([\w-]+)\)/.exec(body)?.[1];
      const own = /background(?:-color)?: var\(--([\w-]+)\)/.exec(body)?.[1];
      // What is filled and is no word has its own measure, and paper on nothing stands on a ground told by another rule.
      if (ink === undefined || /paper/.test(`${own === undefined ? ink : ''}`)) return [];
      const grounds = own === undefined || own.startsWith('hatch') ? ['paper', 'paper-2'] : [own];
      return grounds.map((ground) => ({ where: `${sheet} ${selector.trim()}`, ink, ground }));
    });
  });
}
