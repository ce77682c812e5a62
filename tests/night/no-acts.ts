import type { Acts } from '@/components/night/use-acts';

/** Nothing is told: for what is only looked at. */
export const NO_ACTS: Acts = {
  accept: () => undefined,
  fit: () => undefined,
  runMade: () => undefined,
  moveRuns: () => undefined,
  startNow: () => undefined,
  addRun: () => undefined,
  knockOut: () => undefined,
  comeBack: () => undefined,
};
