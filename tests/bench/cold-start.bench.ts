import { PLAN_EXAMPLE } from '@/app/api/_openapi/examples';
import { type BuiltApp, startBuiltApp } from './built-app';
import { median, ms, tell, times } from './outcome';

/** From no process to the first planned night, against no process to the first empty answer. */
const ROUNDS = 5;
/** A serverless host that wakes for one request should not keep it waiting longer than planning from paper would. */
const WANTED_MS = 3000;

const askPlan = (url: string): Promise<Response> =>
  fetch(`${url}/api/plan`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(PLAN_EXAMPLE),
  });
const askNothing = (url: string): Promise<Response> => fetch(`${url}/api/health`);

async function startedIn(ask: (url: string) => Promise<Response>): Promise<number> {
  const app: BuiltApp = await startBuiltApp({ ask });
  await app.stop();
  return app.startedIn;
}

const taken = { plan: [] as number[], nothing: [] as number[] };
for (let round = 0; round < ROUNDS; round += 1) {
  taken.plan.push(await startedIn(askPlan));
  taken.nothing.push(await startedIn(askNothing));
}
const plan = median(taken.plan);
const nothing = median(taken.nothing);

tell({
  what: 'cold start to the first plan',
  ours: ms(plan),
  peer: `to the first empty answer ${ms(nothing)}`,
  ratio: `${times(plan / nothing)} as long`,
  wanted: { goal: `${ms(WANTED_MS)} or less`, met: plan <= WANTED_MS },
});
