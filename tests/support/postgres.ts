import { type ChildProcess, execFileSync } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client } from 'pg';
import { startGroup } from '@/.scripts/process-group.mjs';

/** Where Debian puts the programs of PostgreSQL, the newest first; null where it is not installed. */
function programs(): string | null {
  const root = '/usr/lib/postgresql';
  if (!existsSync(root)) return null;
  const [newest] = readdirSync(root).sort((a, b) => Number(b) - Number(a));
  const folder = newest === undefined ? null : join(root, newest, 'bin');
  return folder !== null && existsSync(join(folder, 'initdb')) ? folder : null;
}

export const HAS_POSTGRES = programs() !== null;

/** PostgreSQL refuses to run as root: it then runs as the user that its package made. */
function runner(): { readonly uid?: number; readonly gid?: number } {
  if (process.getuid?.() !== 0) return {};
  const number = (option: string) => Number(execFileSync('id', [option, 'postgres'], { encoding: 'utf8' }));
  return { uid: number('-u'), gid: number('-g') };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}

export type Postgres = { readonly address: string; readonly stop: () => Promise<void> };

/** A PostgreSQL of its own with nothing in it, kept nowhere after `stop`. */
export async function startPostgres(): Promise<Postgres> {
  const bin = programs();
  if (bin === null) throw new Error('PostgreSQL is not installed: apt-get install postgresql');
  const as = runner();
  const folder = mkdtempSync(join(tmpdir(), 'heavy-air-postgres-'));
  if (as.uid !== undefined && as.gid !== undefined) chownSync(folder, as.uid, as.gid);
  const data = join(folder, 'data');
  const options = {
    ...as,
    cwd: folder,
    env: { NODE_ENV: 'test', LC_ALL: 'C.UTF-8', PATH: '/usr/bin:/bin' } as const,
  };
  execFileSync(join(bin, 'initdb'), ['-D', data, '-U', 'tests', '-A', 'trust', '--no-sync'], {
    ...options,
    stdio: 'ignore',
  });
  const port = await freePort();
  // A group of its own, so that it ends with whoever started it, however that ends.
  const { child: server, ended } = startGroup(
    join(bin, 'postgres'),
    ['-D', data, '-h', '127.0.0.1', '-p', String(port), '-k', folder, '-F'],
    { ...options, stdio: 'ignore' },
  );
  const address = `postgres://tests@127.0.0.1:${port}/postgres`;
  await untilItAnswers(address, server);
  return {
    address,
    stop: async () => {
      server.kill('SIGQUIT');
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function untilItAnswers(address: string, server: ChildProcess): Promise<void> {
  for (let tries = 0; tries < 200; tries += 1) {
    if (server.exitCode !== null) throw new Error(`PostgreSQL ended with ${server.exitCode}`);
    const client = new Client({ connectionString: address });
    client.on('error', () => undefined);
    try {
      await client.connect();
      await client.end();
      return;
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
  throw new Error('PostgreSQL does not answer');
}
