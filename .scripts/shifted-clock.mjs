import { join } from 'node:path';
import { ROOT } from './sources.mjs';

const FILE = join(ROOT, 'tests', 'support', 'shifted-clock.cjs');

/** `NODE_OPTIONS` under which a Node program, its threads and its own programs have a clock moved by `CLOCK_SHIFT_MS`. */
export function withShiftedClock(nodeOptions = '') {
  return `${nodeOptions} --require ${JSON.stringify(FILE)}`.trim();
}

/** `CLOCK_SHIFT_MS` of a program that starts now, so that its clock stands at an instant [ms]. */
export function shiftTo(instant) {
  return String(instant - Date.now());
}
