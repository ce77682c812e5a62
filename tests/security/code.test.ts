import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { THEME_SCRIPT } from '@/components/shell/theme';
import { filesWith, PRODUCT, PRODUCT_FILES } from '@/tests/support/files-with';
import { ROOT } from '@/tests/support/source-tree';

const SENT_TO_BROWSERS = PRODUCT.filter((path) => !path.startsWith('app/api/'));

/** Files of the product that import one of these packages of Node. */
const importersOf = (...names: readonly string[]): readonly string[] =>
  PRODUCT_FILES.filter(({ imports }) =>
    imports.some(
      ({ target }) => target.kind === 'package' && names.includes(target.name.replace(/^node:/, '')),
    ),
  )
    .map(({ path }) => path)
    .toSorted();

describe('the product', () => {
  it('turns no text into code', () => {
    expect(filesWith(/\beval\(|\bnew Function\b|setTimeout\(\s*['"`]|\bimportScripts\(/)).toEqual([]);
    expect(importersOf('child_process', 'vm')).toEqual([]);
    // One program of ours in a thread, named by a constant.
    expect(importersOf('worker_threads')).toEqual([
      'app/api/_planning/crew.ts',
      'app/api/_planning/thread.ts',
    ]);
  });

  it('turns no text into markup, but for one constant script of its own', () => {
    expect(
      filesWith(/\.(innerHTML|outerHTML)\b|insertAdjacentHTML|document\.write|createContextualFragment/),
    ).toEqual([]);
    expect(filesWith(/dangerouslySetInnerHTML/)).toEqual(['app/layout.tsx']);
    expect(THEME_SCRIPT).not.toMatch(/<\/|<!--|innerHTML|eval/);
  });

  it('leads to addresses outside only where they are written in the code or checked to be https', () => {
    expect(filesWith(/javascript:|window\.open\(|location\.(assign|replace)\(|location\.href\s*=/)).toEqual(
      [],
    );
    expect(filesWith(/\bredirect\(|permanentRedirect\(|Response\.redirect/)).toEqual([]);
    expect(filesWith(/target="_blank"/)).toEqual([]);
  });

  it('sets no cookie and reads none', () => {
    expect(filesWith(/document\.cookie|cookies\(\)|set-cookie|from 'next\/headers'/i)).toEqual([]);
  });

  it('keeps in the browser records, half-typed forms, the look and its own name by lot, and nothing for a session', () => {
    expect(filesWith(/\blocalStorage\b/).toSorted()).toEqual([
      'components/shell/theme.ts',
      'lib/store/device.ts',
      'lib/store/drafts.ts',
    ]);
    expect(filesWith(/\bsessionStorage\b/)).toEqual([]);
  });

  it('writes to the log in one place: a fault of its own, never what was sent', () => {
    expect(filesWith(/\bconsole\./)).toEqual(['app/api/_http/handle.ts']);
    // What is written there becomes lines of the log, which keep no message: log.ts.
    expect(filesWith(/\bconsole\b/)).toEqual(['app/api/_http/handle.ts', 'app/api/_serve/log.ts']);
    expect(filesWith(/\bprocess\.(stdout|stderr)\b/)).toEqual(['app/api/_serve/serve.ts']);
    expect(readFileSync(join(ROOT, 'app/api/_http/handle.ts'), 'utf8')).toMatch(/console\.error\(error\)/);
  });

  it('reads settings on the server only, so that no key can get into a page', () => {
    const reads = filesWith(/process\.env/, SENT_TO_BROWSERS);
    const others = reads.filter((path) =>
      // What the build writes in: which kind of build it is, and where the files of the page and its worker lie.
      /process\.env(?!\.(NODE_ENV|PLANNER_FILE|PAGE_FILES)\b)/.test(readFileSync(join(ROOT, path), 'utf8')),
    );
    expect(others).toEqual([]);
    expect(filesWith(/NEXT_PUBLIC_/)).toEqual([]);
    const page = PRODUCT.filter((path) => path.startsWith('components/'));
    expect(filesWith(/from '@\/lib\/weather\/(settings|get-|weather-deps|request\/)/, page)).toEqual([]);
  });
});
