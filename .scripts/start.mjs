// `npm start`: installs and builds if needed, then serves.
import { buildIfNeeded, installIfNeeded, run } from './prepare.mjs';

installIfNeeded();
buildIfNeeded();
const port = process.env.PORT ?? '3000';
console.log(`Heavy Air is at http://localhost:${port}`);
run('npx', ['--no-install', 'next', 'start', '-p', port], { NEXT_TELEMETRY_DISABLED: '1' });
