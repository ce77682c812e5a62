import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ROOT } from '@/tests/support/source-tree';

const FOLDER = join(ROOT, '.scripts');
const textOf = (name: string) => readFileSync(join(FOLDER, name), 'utf8');
const exported = (name: string) =>
  [...textOf(name).matchAll(/^export (?:async )?(?:function|const|class) (\w+)/gm)].map(([, word]) => word);

it('every script asks the others only for what they have: most of them are run by hand, and rarely', () => {
  const scripts = readdirSync(FOLDER).filter((name) => name.endsWith('.mjs'));
  const asked = scripts.flatMap((name) =>
    [...textOf(name).matchAll(/^import \{([^}]*)\} from '\.\/([\w-]+\.mjs)';/gm)].flatMap(
      ([, names = '', from = '']) =>
        names
          .split(',')
          .map((each) => each.trim().split(' as ')[0] ?? '')
          .filter((each) => each !== '')
          .map((each) => ({ name, from, each })),
    ),
  );
  expect(asked.length).toBeGreaterThan(20);
  expect(asked.filter(({ from, each }) => !exported(from).includes(each))).toEqual([]);
});
