import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { transformSync } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { ASLEEP_SCRIPT, PARSER_SCRIPT } from '@/components/shell/asleep-script';
import { ROOT, type SourceFile, sourceFiles } from '@/tests/support/source-tree';

/**
 * What Chrome 111, Firefox 111 and Safari 16.4, the oldest engines of package.json, do not all have, though the compiler
 * takes it (its libraries are ES2023 and what the server needs). Source: MDN's browser compatibility data, from memory.
 */
const TOO_NEW =
  /\.(toSorted|toReversed|toSpliced|toWellFormed|isWellFormed|checkVisibility)\(|\b(AbortSignal\.any|URL\.(canParse|parse)|Promise\.(withResolvers|try)|Object\.groupBy|Map\.groupBy|Array\.fromAsync|RegExp\.escape|scheduler\.|Intl\.DurationFormat)\b|\bnew Intl\.Segmenter\b|\/[dgimsuy]*v[dgimsuy]*\.(test|exec)/;

const all = new Map(['lib', 'components', 'app'].flatMap(sourceFiles).map((file) => [file.path, file]));

/** All files that a browser may load: those of components and pages, and what they import. */
function clientFiles(): readonly SourceFile[] {
  const found = new Map<string, SourceFile>();
  const waiting = [...all.values()].filter(
    ({ path }) =>
      path.startsWith('components/') ||
      /^app\/(.+\/)?(page|layout|error|not-found|global-error)\.tsx$/.test(path),
  );
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    if (found.has(file.path)) continue;
    found.set(file.path, file);
    for (const { target } of file.imports) {
      const next = target.kind === 'file' ? all.get(target.path) : undefined;
      if (next !== undefined) waiting.push(next);
    }
  }
  return [...found.values()];
}

describe('the oldest engines that are promised', () => {
  it('have everything that the pages call', () => {
    const files = clientFiles();
    expect(files.map(({ path }) => path)).toContain('lib/plan/make-plan.ts');
    const wrong = files
      .map(({ path }) => ({ path, found: TOO_NEW.exec(readFileSync(join(ROOT, path), 'utf8'))?.[0] }))
      .filter(({ found }) => found !== undefined);
    expect(wrong).toEqual([]);
  });

  it('are the ones the README and the page that cannot start name', () => {
    const { browserslist } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'));
    expect(browserslist).toEqual(['chrome >= 111', 'edge >= 111', 'firefox >= 111', 'safari >= 16.4']);
    for (const file of ['README.md', 'components/shell/asleep.tsx']) {
      const text = readFileSync(join(ROOT, file), 'utf8').replace(/\s+/g, ' ');
      expect(text, file).toMatch(/Safari 16\.4 \(iOS 16\.4\), Chrome or Edge 111, or Firefox 111/);
    }
  });

  it('find the size of text set under the name Safari knows', () => {
    expect(readFileSync(join(ROOT, 'app/globals.css'), 'utf8')).toContain('-webkit-text-size-adjust: 100%');
  });

  it('and all older ones can read the script that says why a page stands still (ES5)', () => {
    for (const script of [ASLEEP_SCRIPT, PARSER_SCRIPT]) {
      const written = (target: string) => transformSync(script, { target }).code;
      expect(written('es5')).toBe(written('esnext'));
    }
  });
});
