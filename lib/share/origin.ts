import { DEMO_EVENT_ID, DEMO_MACHINE_ID } from '@/lib/night/demo-night';
import type { NightRecords } from '@/lib/night/night';
import { leavesOf, pathPart } from '@/lib/store/leaves';
import { sameValue } from '@/lib/store/same-value';
import { markOf } from '@/lib/store/trace';
import { NO_TRACE, type Trace, type WriteDot } from '@/lib/store/trace-schema';
import type { SharedNight } from './shared-night';

/** Who notes what follows from parts, plugs, a shared box and the plan: each link makes it anew. */
const follower = (machineId: string): string => `~${machineId}`;

/**
 * A night with whose it is: the ids of its event and machine, and where each field that travels comes from, so that
 * whoever has kept it once can merge what is new in it. The invented night is nobody's.
 */
export function withOrigin(shared: SharedNight, { event, machine }: NightRecords): SharedNight {
  const [travelling] = shared.machines;
  if (
    travelling === undefined ||
    event.value.demo ||
    event.id === DEMO_EVENT_ID ||
    machine.id === DEMO_MACHINE_ID
  )
    return shared;
  const told = leavesOf('machines', { ...machine.value, machine: travelling.machine });
  const own = leavesOf('machines', machine.value);
  const { trace = NO_TRACE } = machine;
  const follows: WriteDot = [follower(machine.id), machine.revision + event.revision];
  const marks = [...told].flatMap(([path, value]): [string, WriteDot][] => {
    if (!path.startsWith('machine/') && path !== 'proven') return [];
    const mark = sameValue(value, own.get(path)) ? markOf(trace, path, value) : follows;
    return mark[1] === 0 || sameValue(mark, trace.from) ? [] : [[path, mark]];
  });
  return {
    ...shared,
    id: event.id,
    trace: travellingTrace(event.trace ?? NO_TRACE, machine.id, follows),
    machines: [
      {
        ...travelling,
        id: machine.id,
        trace: {
          ...(trace.from === undefined ? {} : { from: trace.from }),
          marks: Object.fromEntries(marks),
          seen: { ...trace.seen, [follows[0]]: follows[1] },
        },
      },
    ],
  };
}

const ABOUT_MACHINE = /^(fitted|made|accepted|outFrom)\/([^/]+)(.*)$/;

/** Of the night's trace what travels, with the machine by its place in the link. */
function travellingTrace(trace: Trace, machineId: string, follows: WriteDot): Trace {
  const marks = Object.entries(trace.marks).flatMap(([path, mark]): [string, WriteDot][] => {
    const [, what = '', id = '', rest = ''] = ABOUT_MACHINE.exec(path) ?? [];
    if (what !== '') return id === pathPart(machineId) ? [[`${what}/0${rest}`, mark]] : [];
    return /^(event|readings)\//.test(path) ? [[path, mark]] : [];
  });
  return {
    ...trace,
    marks: { ...Object.fromEntries(marks), 'accepted/0': follows },
    seen: { ...trace.seen, [follows[0]]: follows[1] },
  };
}

/** The trace as it is kept: with the machines' own keys in the paths; null where a machine is nobody's. */
export function tracePlaced(trace: Trace, parts: readonly (string | null)[]): Trace {
  const marks = Object.entries(trace.marks).map(([path, mark]): [string, WriteDot] => {
    const [, what = '', place = '', rest = ''] = ABOUT_MACHINE.exec(path) ?? [];
    const part = parts[Number(place)] ?? null;
    return [what === '' || part === null ? path : `${what}/${part}${rest}`, mark];
  });
  return { ...trace, marks: Object.fromEntries(marks) };
}

/** The same night as if nobody had ever kept it. */
export function withoutOrigin({ id: _, trace: __, machines, ...night }: SharedNight): SharedNight {
  return { ...night, machines: machines.map(({ id: ___, trace: ____, ...machine }) => machine) };
}
