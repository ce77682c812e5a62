// `npm start`: installs and builds if needed, then serves.
import { buildIfNeeded, installIfNeeded, run } from './prepare.mjs';

await installIfNeeded();
await buildIfNeeded();
const port = process.env.PORT ?? '3000';
console.log(`Heavy Air is at http://localhost:${port}`);
await run('npx', ['--no-install', 'next', 'start', '-p', port], { NEXT_TELEMETRY_DISABLED: '1' });
