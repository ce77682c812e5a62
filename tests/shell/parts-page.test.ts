import { expect, it } from 'vitest';
import config from '@/next.config';
import { sourceFiles } from '@/tests/support/source-tree';

it('the page of parts is no page of a build', () => {
  const pages = sourceFiles('app').filter(({ imports }) =>
    imports.some(({ target }) => target.kind === 'file' && target.path.startsWith('components/parts/')),
  );
  expect(pages.map(({ path }) => path)).toEqual(['app/parts/page.dev.tsx']);
  expect(config.pageExtensions).toEqual(['tsx', 'ts']);
});
