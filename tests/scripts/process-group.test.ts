import { spawn } from 'node:child_process';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { expect, it } from 'vitest';
import { startGroup } from '@/.scripts/process-group.mjs';
import { ROOT } from '@/tests/support/source-tree';

/** Starts a program that would run for ever, with our output, and says so. */
const START_ANOTHER = `
  const { spawn } = require('node:child_process');
  const another = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)'], { stdio: 'inherit' });
  another.once('spawn', () => {
    console.log('started');
    another.unref();
  });
`;
const FOR_EVER = 'setInterval(() => {}, 1000);';

/** What is said first, and the end of the stream: it comes when the last program that holds it has ended. */
function heard(stream: Readable | null): {
  readonly first: Promise<string>;
  readonly silence: Promise<void>;
} {
  if (stream === null) throw new Error('no output to hear');
  return {
    first: new Promise((resolve) => stream.once('data', (data) => resolve(String(data).trim()))),
    silence: new Promise((resolve) => stream.once('end', () => resolve())),
  };
}

it('ends what a program has started along with it', async () => {
  const group = startGroup(process.execPath, ['-e', START_ANOTHER + FOR_EVER], { stdio: 'pipe' });
  const { first, silence } = heard(group.child.stdout);
  expect(await first).toBe('started');
  await group.end();
  await silence;
});

it('ends what a program left behind when it ended by itself', async () => {
  const group = startGroup(process.execPath, ['-e', START_ANOTHER], { stdio: 'pipe' });
  const { silence } = heard(group.child.stdout);
  expect(await group.ended).toBe(0);
  await silence;
});

it('passes a signal on before it ends itself, with the code of that signal', async () => {
  const script = `
    const { startGroup } = await import(${JSON.stringify(join(ROOT, '.scripts', 'process-group.mjs'))});
    startGroup(process.execPath, ['-e', ${JSON.stringify(START_ANOTHER + FOR_EVER)}], { stdio: 'inherit' });
  `;
  const own = spawn(process.execPath, ['--input-type=module', '-e', script], { stdio: 'pipe' });
  const { first, silence } = heard(own.stdout);
  expect(await first).toBe('started');
  const ended = new Promise((resolve) => own.once('exit', resolve));
  own.kill('SIGTERM');
  // SIGTERM is number 15 (POSIX); a shell says 128 more.
  expect(await ended).toBe(143);
  await silence;
});

it('says when a program cannot be started at all', async () => {
  await expect(startGroup('/no/such/program', []).ended).rejects.toThrow('ENOENT');
});
