import type { ChildProcess } from 'node:child_process';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { startGroup } from '@/.scripts/process-group.mjs';
import { ROOT } from '@/tests/support/source-tree';

export type BuiltApp = {
  readonly url: string;
  /** From the start of the process to its first good answer [ms]. */
  readonly startedIn: number;
  readonly pid: number;
  readonly stop: () => Promise<void>;
};

/** How long a start may take before something must be wrong. */
const PATIENCE_MS = 60_000;
/** Between two tries to reach a server that is still starting. */
const TRY_EVERY_MS = 5;

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        typeof address === 'object' && address !== null
          ? resolve(address.port)
          : reject(new Error('no port')),
      );
    });
  });
}

/** Waits until `ask` is answered well. */
async function answered(ask: () => Promise<Response>, server: ChildProcess): Promise<void> {
  const until = Date.now() + PATIENCE_MS;
  while (Date.now() < until) {
    if (server.exitCode !== null) throw new Error(`the server ended with ${server.exitCode}`);
    const ok = await ask().then(
      async (response) => {
        await response.arrayBuffer();
        return response.ok;
      },
      () => false,
    );
    if (ok) return;
    await new Promise((done) => setTimeout(done, TRY_EVERY_MS));
  }
  throw new Error('the server did not answer');
}

/** Starts a server of ours on a free port and waits for its first answer, to `ask` or else to its health. */
export async function startServer(
  args: (port: number) => readonly string[],
  {
    env = {},
    ask = (url: string) => fetch(`${url}/api/health`),
  }: {
    readonly env?: Readonly<Record<string, string | undefined>>;
    readonly ask?: (url: string) => Promise<Response>;
  } = {},
): Promise<BuiltApp> {
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const start = performance.now();
  const server = startGroup(process.execPath, args(port), {
    cwd: ROOT,
    // What is measured is the work of a request, so the limit on requests is off.
    env: { ...process.env, NODE_ENV: 'production', REQUESTS_PER_MINUTE: '0', PORT: String(port), ...env },
    stdio: 'ignore',
  });
  try {
    await answered(() => ask(url), server.child);
  } catch (problem) {
    await server.end();
    throw problem;
  }
  return { url, startedIn: performance.now() - start, pid: server.child.pid ?? 0, stop: server.end };
}

/** The app as it was built, served as `npm start` serves it. */
export function startBuiltApp({
  node = [],
  ...options
}: NonNullable<Parameters<typeof startServer>[1]> & {
  readonly node?: readonly string[];
} = {}): Promise<BuiltApp> {
  return startServer(() => [...node, join(ROOT, '.next', 'serve', 'serve.mjs')], options);
}
