import type { MachineJson } from '@/lib/contract/machine';
import { machineSchema } from '@/lib/contract/machine';

/** An invented machine with everything a machine can have, every number different from every other. */
export const FULL_MACHINE: MachineJson = machineSchema.parse({
  name: 'Blue 600',
  carburettors: [{ main: 410 }, { main: 400 }, { main: 410 }],
  jetMarking: 'flow',
  box: [
    { size: 390, count: 3 },
    { size: 400, count: 4 },
    { size: 410, count: 6 },
    { size: 422.5, count: 1 },
  ],
  baseline: {
    air: { temperatureC: -12.3, altimeterHpa: 1017.4, elevationM: 351, dewPointC: -15.6 },
    provenOn: '2026-12-19',
    judged: 'size-rich',
    intakeOffsetC: 4.2,
    note: 'Lake run, plugs read twice',
  },
  trim: { lowest: 1, highest: 5, baseline: 2, percentPerPosition: 1.8 },
  pilot: { jet: 40, jets: [35, 37.5, 42.5], screw: 'fuel', turns: 1.1, leastTurns: 0.6, mostTurns: 2.2 },
  needle: { groove: 3, grooves: 5, percentPerGroove: 2.4 },
  limits: { leanPercent: 1.7, richPercent: 6.5, risk: 0.07 },
  intakeOffsetC: 8.6,
  response: {
    pressureExponent: 0.71,
    temperatureExponent: 0.66,
    pressureSd: 0.08,
    temperatureSd: 0.05,
    correlation: 0.4,
    origin: 'chart-and-log',
  },
  fuelDensity: { offsetC: 2.9, baselineC: 11 },
  richPowerLoss: 2.3,
  swapWorthPercent: 1.2,
  ratedPowerHp: 127,
});
