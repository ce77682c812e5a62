import { readdirSync, readFileSync } from 'node:fs';

/** Processor time of a process so far [ms]: of the thread that answers, and of all others. */
export type ProcessTime = { readonly main: number; readonly others: number };

/** From the kernel's count in nanoseconds (proc(5), schedstat), which others on the machine do not lengthen. */
export function processTime(pid: number): ProcessTime {
  const time = { main: 0, others: 0 };
  for (const thread of readdirSync(`/proc/${pid}/task`)) {
    const spent = spentBy(`/proc/${pid}/task/${thread}/schedstat`);
    if (Number(thread) === pid) time.main += spent;
    else time.others += spent;
  }
  return time;
}

/** A thread may end while it is looked at. */
function spentBy(file: string): number {
  try {
    return Number(readFileSync(file, 'utf8').split(' ')[0]) / 1e6;
  } catch {
    return 0;
  }
}

export function timeSince(pid: number, before: ProcessTime): ProcessTime {
  const now = processTime(pid);
  return { main: now.main - before.main, others: now.others - before.others };
}

/** What all processors of the machine have worked so far, whoever for [ms]; a tick is 10 ms (proc(5), USER_HZ). */
export function machineTime(): number {
  const [line = ''] = readFileSync('/proc/stat', 'utf8').split('\n');
  const [user = 0, nice = 0, system = 0, , , irq = 0, softirq = 0] = line
    .trim()
    .split(/\s+/)
    .slice(1)
    .map(Number);
  return 10 * (user + nice + system + irq + softirq);
}

/** Resident memory of a process [MB]. */
export function residentMegabytes(pid: number): number {
  const found = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return Number(found ?? 0) / 1024;
}
