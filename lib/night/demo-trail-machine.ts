import type { MachineInput } from '@/lib/contract/machine';

/** An invented mountain twin with everything described, for those who have no machine here yet. */
export const DEMO_TRAIL_MACHINE: MachineInput = {
  name: 'Jorun Aasvik’s trail twin',
  carburettors: [{ main: 360 }, { main: 360 }],
  jetMarking: 'flow',
  box: [310, 320, 330, 340, 350, 360, 370, 380, 390, 400, 410, 420].map((size) => ({ size, count: 2 })),
  baseline: {
    air: { temperatureC: -1, pressureHpa: 912, elevationM: 900, relativeHumidity: 0.75 },
    judged: 'right',
    note: 'Invented.',
  },
  pilot: { jet: 45, jets: [42.5, 45, 47.5, 50], screw: 'fuel', turns: 1, leastTurns: 0.5, mostTurns: 2.25 },
  needle: { groove: 3, grooves: 5 },
  trim: { lowest: 1, highest: 5, baseline: 3, percentPerPosition: 1.5 },
  limits: { leanPercent: 2, richPercent: 8, risk: 0.05 },
  intakeOffsetC: 6,
};
