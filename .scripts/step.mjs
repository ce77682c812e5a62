import { setPriority } from 'node:os';
import { text } from 'node:stream/consumers';
import { runGroup, startGroup } from './process-group.mjs';
import { ROOT } from './sources.mjs';

/**
 * A third of what the check beside it gets where both want all, as Unix counts. At the end of the scale a test would wait
 * for its turn until its time is over.
 */
const PATIENT = 5;

const begin = (title) => console.log(`\n== ${title}`);

function end(title, started, status) {
  const seconds = ((Date.now() - started) / 1000).toFixed(1);
  console.log(`-- ${title}: ${status === 0 ? 'ok' : 'FAILED'} in ${seconds} s`);
  return status === 0;
}

/** Runs one of the checks under a heading; whether it went well. */
export async function step(title, command, args, env = {}) {
  const started = Date.now();
  begin(title);
  return end(title, started, await runGroup(command, args, { cwd: ROOT, env: { ...process.env, ...env } }));
}

/**
 * Runs a check beside another one, in the time that one leaves over, and tells all of it once it has ended; whether it
 * went well.
 */
export async function stepBeside(title, command, args, env = {}) {
  const started = Date.now();
  const { child, ended } = startGroup(command, args, {
    cwd: ROOT,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  // What it starts later is as patient as itself.
  if (child.pid !== undefined) setPriority(child.pid, PATIENT);
  const said = Promise.all([text(child.stdout), text(child.stderr)]);
  const status = await ended;
  begin(title);
  for (const words of await said) process.stdout.write(words);
  return end(title, started, status);
}
