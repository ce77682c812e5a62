import type { Machine, Setting } from './machine';

/** The jets and trim position the baseline was proven with. */
export function baselineSetting(machine: Machine): Setting {
  return {
    mains: machine.carburettors.map((carburettor) => carburettor.main),
    trim: machine.trim === null ? null : machine.trim.baseline,
  };
}
