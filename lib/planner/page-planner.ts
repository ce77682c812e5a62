import './early-start';
import { createPlanner, type PlanningWorker } from './planner';
import { planningAhead } from './planning-ahead';

/** The one worker of a page. A development server and unit tests have no file for it and plan in place. */
export const pagePlanner = planningAhead(
  createPlanner(() => {
    const file = process.env.PLANNER_FILE;
    if (file === undefined || typeof Worker === 'undefined') return null;
    return workerOf(globalThis.heavyAirStart?.worker ?? new Worker(file));
  }),
);

function workerOf(worker: Worker): PlanningWorker {
  return {
    send: (task) => worker.postMessage(task),
    listen: (hear, fail) => {
      worker.addEventListener('message', ({ data }) => {
        // The other thing a worker says is its early answer, and that is not for the planner.
        if ('number' in data) hear(data);
      });
      worker.addEventListener('messageerror', fail);
      worker.addEventListener('error', (event) => {
        // It is planned all the same, so there is nothing to complain of.
        event.preventDefault();
        fail();
      });
    },
    end: () => worker.terminate(),
  };
}
