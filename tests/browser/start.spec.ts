import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { type AddressInfo, connect, createServer, type Socket } from 'node:net';
import { join } from 'node:path';
import { expect } from '@playwright/test';
import { hashOf, hashOfSources } from '../../.scripts/sources.mjs';
import { heavyNight } from './heavy-night';
import { test } from './test';

test.describe.configure({ mode: 'serial' });

/** Ten seconds are what a supervisor waits before it kills (systemd's and Compose's own limits are set to more). */
const END_MS = 10_000;
/** A machine with two cores builds nothing here, but other tests run beside this one. */
const START_MS = 60_000;

function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}

type Started = {
  readonly npm: ChildProcess;
  readonly port: number;
  readonly output: () => string;
  readonly exited: Promise<number | null>;
};

/** What `npm start` would install or build first is no part of this, and would be under every other test's feet. */
function expectNothingToPrepare(): void {
  const stamped = (name: string) => readFileSync(join('node_modules', '.heavy-air', name), 'utf8');
  expect(stamped('packages')).toBe(hashOf(['package-lock.json']));
  expect(stamped('build')).toBe(hashOfSources());
}

/** `npm start`, once it serves. */
async function npmStart(env: Readonly<Record<string, string>> = {}): Promise<Started> {
  expectNothingToPrepare();
  const port = await freePort();
  const npm = spawn('npm', ['start'], {
    env: { ...process.env, PORT: String(port), ...env },
    // A group of its own: what is left of it can be counted, and nobody signals it but this test.
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let text = '';
  for (const stream of [npm.stdout, npm.stderr]) stream?.on('data', (data) => (text += String(data)));
  const exited = new Promise<number | null>((resolve) => npm.once('exit', (code) => resolve(code)));
  const started = { npm, port, output: () => text, exited };
  try {
    await expect.poll(started.output, { timeout: START_MS }).toContain('"event":"serving"');
  } catch (late) {
    killAll(started);
    throw late;
  }
  return started;
}

const groupOf = ({ npm }: Started): number => -(npm.pid ?? Number.NaN);

function isAlive(group: number): boolean {
  try {
    process.kill(group, 0);
    return true;
  } catch {
    return false;
  }
}

function killAll(started: Started): void {
  if (isAlive(groupOf(started))) process.kill(groupOf(started), 'SIGKILL');
}

const opened = (socket: Socket): Promise<Socket> =>
  new Promise((resolve, reject) => socket.once('connect', () => resolve(socket)).once('error', reject));

const closed = (socket: Socket): Promise<void> =>
  new Promise((resolve) => {
    socket.on('error', () => undefined);
    socket.once('close', () => resolve());
    socket.resume();
  });

const refuses = (port: number, host: string): Promise<boolean> =>
  opened(connect(port, host)).then(
    (socket) => {
      socket.destroy();
      return false;
    },
    () => true,
  );

test('npm start serves this computer alone, and ends as a whole: what was asked is answered, what was half sent is dropped', async () => {
  test.setTimeout(START_MS + 60_000);
  const started = await npmStart();
  const { npm, port, output, exited } = started;
  try {
    expect(output()).toContain(`http://localhost:${port}`);
    expect(output()).toContain('HOST=0.0.0.0');
    // All of 127.0.0.0/8 is this computer (RFC 1122, 3.2.1.3); listened to is one address of it.
    expect(await refuses(port, '127.0.0.2')).toBe(true);

    const url = `http://127.0.0.1:${port}`;
    // A connection that is kept open, one that says nothing, half a head and half a body.
    expect((await fetch(`${url}/api/health`)).status).toBe(200);
    const half = await Promise.all(
      [
        '',
        'GET /api/health HTTP/1.1\r\nHo',
        'POST /api/plan HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 900\r\n\r\n{"eve',
      ].map(async (text) => {
        const socket = await opened(connect(port, '127.0.0.1'));
        socket.write(text);
        return { dropped: closed(socket) };
      }),
    );
    const body = JSON.stringify(heavyNight());
    const headers = { 'content-type': 'application/json' };
    const asked = [1, 2].map(async () => {
      const answer = await fetch(`${url}/api/plan`, { method: 'POST', headers, body });
      return { status: answer.status, plans: (await answer.json()).plans?.length };
    });
    // Both are in work or wait for it: the server has read them when this comes back.
    await expect.poll(async () => (await fetch(`${url}/api/ready`)).status).toBe(200);

    const began = performance.now();
    // To npm alone, as a supervisor does it.
    npm.kill('SIGTERM');
    await exited;
    expect(performance.now() - began).toBeLessThan(END_MS);
    await expect.poll(() => isAlive(groupOf(started)), { timeout: 2_000 }).toBe(false);
    expect(await Promise.all(asked)).toEqual(
      [1, 2].map(() => ({ status: 200, plans: heavyNight().machines.length })),
    );
    await Promise.all(half.map(({ dropped }) => dropped));
    expect(await refuses(port, '127.0.0.1')).toBe(true);
    expect(output()).toContain('"event":"ended"');
  } finally {
    killAll(started);
  }
});

test('npm start goes on where nobody reads its log any more, and ends when it is told to', async () => {
  test.setTimeout(START_MS + 60_000);
  const started = await npmStart({ LOG_REQUESTS: '1' });
  const { npm, port, exited } = started;
  try {
    for (const stream of [npm.stdout, npm.stderr]) stream?.destroy();
    for (let i = 0; i < 5; i += 1) {
      const answered = await fetch(`http://127.0.0.1:${port}/api/health`);
      expect([answered.status, await answered.json()]).toEqual([200, { status: 'ok' }]);
    }
    const began = performance.now();
    npm.kill('SIGTERM');
    await exited;
    expect(performance.now() - began).toBeLessThan(END_MS);
    await expect.poll(() => isAlive(groupOf(started)), { timeout: 2_000 }).toBe(false);
  } finally {
    killAll(started);
  }
});

test('npm start serves the network where HOST says so, and says the addresses', async () => {
  test.setTimeout(START_MS + 60_000);
  const started = await npmStart({ HOST: '0.0.0.0' });
  try {
    expect(await refuses(started.port, '127.0.0.2')).toBe(false);
    expect(started.output()).not.toContain('Only this computer');
  } finally {
    // As Ctrl-C in a terminal: to everybody in the group at once.
    process.kill(groupOf(started), 'SIGINT');
    await started.exited;
    await expect.poll(() => isAlive(groupOf(started)), { timeout: END_MS }).toBe(false);
  }
});

test('health is answered while eight large nights are planned, and before them', async ({ request }) => {
  const order: string[] = [];
  const nights = Array.from({ length: 8 }, async () => {
    const answer = await request.post('/api/plan', { data: heavyNight() });
    order.push('plan');
    return answer.status();
  });
  for (let i = 0; i < 5; i += 1) {
    expect((await request.get('/api/health')).status()).toBe(200);
    order.push('health');
  }
  expect(await Promise.all(nights)).toEqual(Array.from({ length: 8 }, () => 200));
  // The server's one thread for planning has done at most a few of them meanwhile.
  expect(order.slice(0, order.lastIndexOf('health')).filter((what) => what === 'plan').length).toBeLessThan(
    8,
  );
});
