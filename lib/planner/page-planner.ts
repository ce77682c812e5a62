import { createPlanner, type PlanningWorker } from './planner';

/** The one worker of a page. A development server and unit tests have no file for it and plan in place. */
export const pagePlanner = createPlanner(() => {
  const file = process.env.PLANNER_FILE;
  return file === undefined || typeof Worker === 'undefined' ? null : workerOf(new Worker(file));
});

function workerOf(worker: Worker): PlanningWorker {
  return {
    send: (task) => worker.postMessage(task),
    listen: (hear, fail) => {
      worker.onmessage = ({ data }) => hear(data);
      worker.onmessageerror = fail;
      worker.onerror = (event) => {
        // It is planned all the same, so there is nothing to complain of.
        event.preventDefault();
        fail();
      };
    },
    end: () => worker.terminate(),
  };
}
