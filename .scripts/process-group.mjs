// Every program a script starts leads a process group of its own, so that it is ended with all it has started: a server
// started through npx is a grandchild, and would outlive a signal that reaches its parents only.
import { spawn } from 'node:child_process';
import { constants } from 'node:os';

const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'];
/** What a program may take to end by itself [ms]. */
const PATIENCE_MS = 5_000;
const running = new Set();
const ENDS = SIGNALS.map((signal) => [signal, () => void endAll(signal)]);
let watching = false;
let ending = false;

/** Signals a whole group; one that has ended already is no mistake. */
function signalGroup(child, signal) {
  try {
    process.kill(-child.pid, signal);
  } catch (problem) {
    if (problem.code !== 'ESRCH') throw problem;
  }
}

async function endGroup({ child, exited }, signal) {
  signalGroup(child, signal);
  const impatience = setTimeout(() => signalGroup(child, 'SIGKILL'), PATIENCE_MS);
  await exited;
  clearTimeout(impatience);
}

/** A second signal, as from a terminal and from npm for one press of Ctrl-C, changes nothing. */
async function endAll(signal) {
  if (ending) return;
  ending = true;
  await Promise.all([...running].map((group) => endGroup(group, signal)));
  // What a shell says of a program that was ended by a signal.
  process.exit(128 + constants.signals[signal]);
}

/** Hands the signals back, for a process that goes on without any program of its own: it ends in its own way. */
export function stopWatchingOwnEnd() {
  for (const [signal, end] of ENDS) process.off(signal, end);
  watching = false;
}

function watchOwnEnd() {
  if (watching) return;
  watching = true;
  for (const [signal, end] of ENDS) process.on(signal, end);
  process.once('exit', () => {
    for (const { child } of running) signalGroup(child, 'SIGKILL');
  });
}

/**
 * Starts a program at the head of a group of its own. `ended` brings its exit code, and what it leaves behind ends with it;
 * `end` ends all of it.
 */
export function startGroup(command, args, options = {}) {
  watchOwnEnd();
  const child = spawn(command, args, { ...options, detached: true });
  const exited = new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (code, signal) => resolve(code ?? 128 + constants.signals[signal]));
  });
  const group = { child, exited };
  running.add(group);
  const over = () => {
    running.delete(group);
    if (child.pid !== undefined) signalGroup(child, 'SIGTERM');
  };
  exited.then(over, over);
  // Whoever waits for it must not go on to the next thing while all of it is being ended.
  const ended = exited.then((status) => (ending ? new Promise(() => {}) : status));
  return { child, ended, end: () => endGroup(group, 'SIGTERM') };
}

/** Runs a program to its end, its output going where ours goes; its exit code. */
export function runGroup(command, args, options = {}) {
  return startGroup(command, args, { stdio: ['ignore', 'inherit', 'inherit'], ...options }).ended;
}
