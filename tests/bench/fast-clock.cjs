// Loaded before a server (`node --require`): a clock that runs CLOCK_SPEED times as fast, timers with it. On SIGUSR2 the
// garbage is collected and what the process holds is written to HELD_FILE.
const { writeFileSync } = require('node:fs');
const { isMainThread } = require('node:worker_threads');

const speed = Number(process.env.CLOCK_SPEED ?? 1);
const from = Number(process.env.CLOCK_FROM ?? Date.now());
const MachineDate = globalThis.Date;
const began = MachineDate.now();
const now = () => Math.round(from + (MachineDate.now() - began) * speed);
const machineTimeout = globalThis.setTimeout;

globalThis.Date = new Proxy(MachineDate, {
  construct: (date, given, asked) => Reflect.construct(date, given.length === 0 ? [now()] : given, asked),
  apply: () => new MachineDate(now()).toString(),
  get: (date, name) => (name === 'now' ? now : Reflect.get(date, name)),
});
// Short waits are of the network and of the framework, and these two of the threads (`app/api/_planning`): they are real.
const SHORT = 100;
const REAL = [30_000, 60_000];
globalThis.setTimeout = Object.assign(
  (work, ms = 0, ...given) =>
    machineTimeout(work, ms < SHORT || REAL.includes(ms) ? ms : ms / speed, ...given),
  machineTimeout,
);

if (isMainThread)
  process.on('SIGUSR2', () => {
    globalThis.gc?.();
    const { heapUsed, rss } = process.memoryUsage();
    writeFileSync(process.env.HELD_FILE, JSON.stringify({ heapUsed, rss }));
  });
