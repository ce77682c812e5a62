import type { MachineInput } from '@/lib/contract/machine';
import {
  type LogRecord,
  logRecordSchema,
  type MachineRecord,
  machineRecordSchema,
  type Stored,
} from '@/lib/store/records';

/** An invented twin with its baseline at -10 °C and 990 hPa, dated. */
export function machineRecord(
  change: Partial<MachineRecord> = {},
  machine: Partial<MachineInput> = {},
): MachineRecord {
  return {
    ...machineRecordSchema.parse({
      machine: {
        name: 'Twin 800',
        carburettors: [{ main: 410 }, { main: 410 }],
        box: [380, 390, 400, 410, 420, 430, 440].map((size) => ({ size, count: 2 })),
        baseline: {
          air: { temperatureC: -10, pressureHpa: 990, elevationM: 200, relativeHumidity: 0.7 },
          provenOn: '2027-01-10',
        },
        ...machine,
      },
    }),
    ...change,
  };
}

/** A run of that twin: on 410, right by its plugs, unless told otherwise. */
export function loggedRun(id: string, change: Partial<LogRecord> = {}): Stored<LogRecord> {
  const value = logRecordSchema.parse({
    machineId: 'twin',
    at: '2027-01-16T20:30:00-06:00',
    air: { temperatureC: -15, pressureHpa: 985, elevationM: 200, relativeHumidity: 0.7 },
    setting: { mains: [410, 410], trim: null },
    verdict: 'right',
    sizes: 0,
    judgedBy: 'plugs',
    ...change,
  });
  return { id, revision: 1, updatedAt: '2027-01-16T21:00:00.000Z', value };
}
