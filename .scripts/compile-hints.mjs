// Chromium compiles functions when they are first called, on the thread that draws the page; a script that begins with
// this comment it compiles whole while it still arrives, on another thread (V8's explicit compile hints, since Chrome 136). Other engines see
// a comment. It stands on what the first call runs anyway and nowhere else: elsewhere it would compile what nobody calls.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const HINT = '//# allFunctionsCalledOnLoad\n';
const SCRIPT_TAG = /<script\b[^>]*\bsrc="\/_next\/(static\/[^"?]+\.js)[^>]*>/g;
/** How the framework writes what an `import()` waits for. */
const LATE_FILES = /\["static\/chunks\/[^\]]*"\]/g;

/** Marks the scripts that a page names and those which these ask for; says how many. */
export function writeCompileHints(output, html) {
  const read = (path) => readFileSync(join(output, path), 'utf8');
  const named = [...html.matchAll(SCRIPT_TAG)]
    .filter(([tag]) => !/nomodule/i.test(tag))
    .map(([, path]) => path);
  const asked = named
    .flatMap((path) => read(path).match(LATE_FILES) ?? [])
    .flatMap((list) => JSON.parse(list))
    .filter((path) => path.endsWith('.js'));
  const marked = new Set([...named, ...asked]);
  for (const path of marked) writeFileSync(join(output, path), HINT + read(path));
  return marked.size;
}
