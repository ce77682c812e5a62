import { type ChildProcess, type StdioOptions, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable } from 'node:stream';

/** Programs of one window, ended together, the last one started first. */
export type Programs = {
  readonly start: (
    command: string,
    args: readonly string[],
    more?: { readonly env?: Readonly<Record<string, string>>; readonly stdio?: StdioOptions },
  ) => ChildProcess;
  readonly home: string;
  readonly end: () => Promise<void>;
};

export function openPrograms(): Programs {
  const home = mkdtempSync(join(tmpdir(), 'heavy-air-engine-'));
  const running: ChildProcess[] = [];
  return {
    home,
    start: (command, args, { env = {}, stdio = 'ignore' } = {}) => {
      const program = spawn(command, args, { stdio, env: { ...process.env, HOME: home, ...env } });
      running.unshift(program);
      return program;
    },
    end: async () => {
      for (const program of running) await ended(program);
      rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    },
  };
}

async function ended(program: ChildProcess): Promise<void> {
  if (program.exitCode !== null || program.signalCode !== null) return;
  const over = new Promise((resolve) => program.once('exit', resolve));
  program.kill();
  await over;
}

/** The first match of a program's words; it has ended or says nothing fitting in time where this throws. */
export function heardFrom(stream: Readable | null | undefined, pattern: RegExp): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = '';
    const late = setTimeout(() => reject(new Error(`not heard: ${pattern} in "${text}"`)), 20_000);
    stream?.on('data', (part) => {
      text += String(part);
      const found = pattern.exec(text)?.[1];
      if (found === undefined) return;
      clearTimeout(late);
      resolve(found);
    });
  });
}

export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0));
    });
  });
}
