// `npm run hindcast`: a season of real hours against eight ways of jetting. `npm run hindcast 1000` for more nights.
import { join } from 'node:path';
import { installIfNeeded } from './prepare.mjs';
import { runGroup } from './process-group.mjs';
import { ROOT } from './sources.mjs';

await installIfNeeded();
const file = join(ROOT, 'tests', 'hindcast', 'hindcast.ts');
process.exit(await runGroup('npx', ['--no-install', 'tsx', file, ...process.argv.slice(2)], { cwd: ROOT }));
