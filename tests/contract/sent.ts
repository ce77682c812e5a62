import type { HourJson } from '@/lib/contract/event';
import { type MachineInput, type MachineJson, machineSchema } from '@/lib/contract/machine';

/** A twin with staggered jets, as it may be sent; distinct numbers everywhere. */
export const TWIN: MachineInput = {
  name: 'Twin',
  carburettors: [{ main: 410 }, { main: 400 }],
  box: [
    { size: 420, count: 2 },
    { size: 400, count: 1 },
    { size: 410, count: 2 },
  ],
  baseline: { air: { temperatureC: -8, pressureHpa: 985, relativeHumidity: 0.75 } },
};

export const twin = (more: Partial<MachineInput> = {}): MachineJson =>
  machineSchema.parse({ ...TWIN, ...more });

export const hour = (clock: string, temperatureC: number, more: Partial<HourJson> = {}): HourJson => ({
  time: `2027-01-16T${clock}:00-06:00`,
  temperatureC,
  relativeHumidity: 0.8,
  ...more,
});
