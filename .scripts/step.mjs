import { runGroup } from './process-group.mjs';
import { ROOT } from './sources.mjs';

/** Runs one of the checks under a heading; whether it went well. */
export async function step(title, command, args, env = {}) {
  const started = Date.now();
  console.log(`\n== ${title}`);
  const status = await runGroup(command, args, { cwd: ROOT, env: { ...process.env, ...env } });
  const seconds = ((Date.now() - started) / 1000).toFixed(1);
  console.log(`-- ${title}: ${status === 0 ? 'ok' : 'FAILED'} in ${seconds} s`);
  return status === 0;
}
