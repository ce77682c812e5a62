import { fail, type Result } from '@/lib/result/result';

/** Lets one job run at a time, in the order of asking, and turns away the one too many. */
export type Queue = {
  readonly run: <T, R>(job: () => Promise<Result<T, R>>) => Promise<Result<T, R | { readonly code: 'busy' }>>;
};

export function createQueue(mostWaiting: number): Queue {
  let last: Promise<unknown> = Promise.resolve();
  let waiting = 0;
  return {
    async run(job) {
      if (waiting >= mostWaiting) return fail({ code: 'busy' });
      waiting += 1;
      const mine = last.then(job).finally(() => {
        waiting -= 1;
      });
      last = mine.catch(() => undefined);
      return mine;
    },
  };
}
