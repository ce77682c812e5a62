import { createRequire } from 'node:module';
import { join } from 'node:path';
import { compileFunction } from 'node:vm';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type Drawn, nodeOf } from '@/lib/planner/drawn';
import { ROOT } from '@/tests/support/source-tree';

const PLAIN = join(ROOT, '.scripts', 'plain-jsx.mjs');

/** It brings no types. */
type Jsdom = { readonly JSDOM: new () => { readonly window: { readonly document: Document } } };

const { JSDOM }: Jsdom = createRequire(import.meta.url)('jsdom');
const { document } = new JSDOM().window;

beforeAll(() => vi.stubGlobal('document', document));
afterAll(() => vi.unstubAllGlobals());

/** What a script that draws a tree leaves as `drawn`. */
async function ran(source: string, alias: Record<string, string>): Promise<unknown> {
  const { outputFiles } = await build({
    stdin: { contents: source, resolveDir: ROOT, loader: 'tsx' },
    bundle: true,
    write: false,
    platform: 'node',
    format: 'cjs',
    jsx: 'automatic',
    define: { 'process.env.NODE_ENV': '"production"' },
    alias,
    logLevel: 'silent',
  });
  const module = { exports: { drawn: undefined as unknown } };
  const script = compileFunction(outputFiles?.[0]?.text ?? '', ['module', 'require']);
  script(module, createRequire(import.meta.url));
  return module.exports.drawn;
}

/** As the browser would write down what stands in the page. */
const asThere = (place: Element): string =>
  place.innerHTML.replaceAll(/ style="[^"]*"/g, (style) => style.replaceAll(/[ ;]/g, ''));

async function byReact(source: string): Promise<string> {
  const place = document.createElement('div');
  place.innerHTML = String(
    await ran(
      `import { renderToStaticMarkup } from 'react-dom/server'; ${source}; export const drawn = renderToStaticMarkup(tree);`,
      {},
    ),
  );
  return asThere(place);
}

async function apart(source: string): Promise<string> {
  const place = document.createElement('div');
  // What is drawn apart is what nodeOf takes.
  const drawn = (await ran(`${source}; export const drawn = tree;`, {
    react: PLAIN,
    'react/jsx-runtime': PLAIN,
  })) as Drawn;
  place.append(nodeOf(drawn));
  return asThere(place);
}

const SHAPES: Readonly<Record<string, string>> = {
  'text with signs of its own': `const tree = <p title={'"a" & <b>'}>{"Ilsa’s <i>night</i> & day's \\"jets\\""}</p>`,
  'what draws nothing': 'const tree = <p>{null}{undefined}{false}{true}{0}{""}</p>',
  'lists and fragments':
    'const tree = <ul>{[1, 2].map((n) => <li key={n}>{n} </li>)}<><li>a</li>{[<li key="b">b</li>]}</></ul>',
  'attributes that are there or not':
    'const tree = <fieldset disabled><button type="button" disabled={false} className={undefined} onClick={() => 1}>x</button></fieldset>',
  'words for the ear':
    'const tree = <p aria-hidden="true" aria-busy={false} aria-label="Next" role={undefined}>x</p>',
  'styles and names of their own':
    "const tree = <p style={{ '--columns': 3, insetInlineStart: '36.29%' } as never} className=\"a b\">x</p>",
  pictures:
    'const tree = <svg width="100%" height="44" className="a"><line x1="0" x2="1%" y1={43} y2="44" /><path d="M0 0" /></svg>',
  'components with state':
    "import { useState, useRef, useMemo, useCallback, useEffect } from 'react'; function Part({ size = 2, children }) { const [open] = useState(() => size > 1); const ref = useRef(4); const twice = useMemo(() => size * 2, [size]); const press = useCallback(() => 1, []); useEffect(() => { throw new Error('not drawn') }); return <div onClick={press}>{open ? twice : null}{ref.current}{children}</div>; } const tree = <Part><b>in</b> it</Part>",
};

describe('what is drawn apart from the page', () => {
  it.each(Object.entries(SHAPES))('%s is what React draws', async (_, source) => {
    expect(await apart(source)).toBe(await byReact(source));
  });

  it.each([
    ['a place for the page', '<p ref={() => undefined} />', 'no ref in what'],
    [
      'HTML from elsewhere',
      "<p dangerouslySetInnerHTML={{ __html: '<b>' }} />",
      'no dangerouslySetInnerHTML',
    ],
    ['a class', '<Part />', "cannot be invoked without 'new'"],
    ['what is no component', '<Other />', 'only elements and functions'],
  ])('refuses %s rather than drawing it otherwise', async (_, tree, why) => {
    const source = `class Part { render() { return <p />; } } const Other = {}; const tree = ${tree}`;
    await expect(apart(source)).rejects.toThrow(why);
  });
});
