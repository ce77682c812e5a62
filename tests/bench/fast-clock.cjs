// Loaded before a server (`node --require`, which reaches every thread too): a clock that runs CLOCK_SPEED times as fast.
// On SIGUSR2 the garbage is collected and what the process holds is written to HELD_FILE.
const { writeFileSync } = require('node:fs');
const { isMainThread } = require('node:worker_threads');

const speed = Number(process.env.CLOCK_SPEED ?? 1);
const from = Number(process.env.CLOCK_FROM ?? Date.now());
const MachineDate = globalThis.Date;
const began = Number(process.env.CLOCK_BEGAN ?? MachineDate.now());
const now = () => Math.round(from + (MachineDate.now() - began) * speed);
const machineTimeout = globalThis.setTimeout;

globalThis.Date = new Proxy(MachineDate, {
  construct: (date, given, asked) => Reflect.construct(date, given.length === 0 ? [now()] : given, asked),
  apply: () => new MachineDate(now()).toString(),
  get: (date, name) => (name === 'now' ? now : Reflect.get(date, name)),
});

// What waits for a socket or a thread waits for a machine, which is no faster than ever: whatever is short, what the
// server itself and the libraries ask for, and the patience with weather services (`lib/weather/request/timings.ts`).
const SHORT_MS = 100;
const WEATHER_MS = [1200, 2000, 3500, 4000, 8000];
const OF_THE_MACHINE = /[/\\](node_modules|\.next[/\\]serve)[/\\]/;
const callerOfTimeout = () => new Error('where').stack.split('\n')[3] ?? '';

globalThis.setTimeout = Object.assign((work, ms = 0, ...given) => {
  const real = ms < SHORT_MS || WEATHER_MS.includes(ms) || OF_THE_MACHINE.test(callerOfTimeout());
  return machineTimeout(work, real ? ms : ms / speed, ...given);
}, machineTimeout);

if (isMainThread)
  process.on('SIGUSR2', () => {
    globalThis.gc?.();
    const { heapUsed, external, rss } = process.memoryUsage();
    writeFileSync(process.env.HELD_FILE, JSON.stringify({ heapUsed, external, rss }));
  });
