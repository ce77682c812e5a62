// `npm start`: installs and builds if needed, then serves, in this very process: nothing is left behind when it ends.
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { buildIfNeeded, installIfNeeded } from './prepare.mjs';
import { stopWatchingOwnEnd } from './process-group.mjs';
import { ROOT } from './sources.mjs';

/** Said before serving: from then on every line is one of the log. */
function sayWhere() {
  const port = process.env.PORT ?? '3000';
  const host = process.env.HOST?.trim() || '127.0.0.1';
  console.log(`Heavy Air is at http://localhost:${port}`);
  if (host === '127.0.0.1' || host === 'localhost' || host === '::1') {
    console.log('Only this computer can reach it. For phones on the same network: HOST=0.0.0.0 npm start');
    return;
  }
  const all = host === '0.0.0.0' || host === '::';
  const addresses = Object.values(networkInterfaces())
    .flat()
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address);
  for (const address of all ? addresses : [host])
    console.log(
      `For others on the network: http://${address.includes(':') ? `[${address}]` : address}:${port}`,
    );
}

await installIfNeeded();
await buildIfNeeded();
sayWhere();
stopWatchingOwnEnd();
await import(pathToFileURL(join(ROOT, '.next', 'serve', 'serve.mjs')).href);
