// Chromium compiles functions when they are first called, on the thread that draws the page; a script that begins with
// this comment it compiles whole while it still arrives, on another thread (V8's explicit compile hints, since Chrome 136). Other engines see
// a comment. It stands on what the first call runs anyway and nowhere else: elsewhere it would compile what nobody calls.
import { readFileSync, writeFileSync } from 'node:fs';

const HINT = '//# allFunctionsCalledOnLoad\n';

/** Marks scripts. */
export function writeCompileHints(files) {
  for (const file of files) writeFileSync(file, HINT + readFileSync(file, 'utf8'));
}
