/// <reference lib="webworker" />
// The program of the page's worker: it plans, and before it is asked to it draws the first screen of who comes for the
// first time. The build bundles it into a file of its own, with .scripts/plain-jsx.mjs in React's place.
import { demoNight, demoRequest, nightOfDemo } from '@/lib/night/demo-night';
import { makePlan } from '@/lib/plan/make-plan';
import type { PlanRequest } from '@/lib/plan/types';
import { type EarlyQuestion, questionOfName } from '@/lib/planner/early-start';
import { answerTasks } from '@/lib/planner/tasks';
import { expectOk } from '@/lib/result/result';
import { standingOf } from '@/lib/standing/standing';
import { DATABASE_NAME } from '@/lib/store/database-name';
import { deviceHours } from '@/lib/time/device-hours';
import { clockStep } from '@/lib/time/instant';
import { EarlyAnswer } from './early-answer';

declare const self: DedicatedWorkerGlobalScope;

/** What was planned for the early answer, for the page that asks the same a moment later. */
const planned = new Map<string, ReturnType<typeof makePlan>>();

const planOf = (request: PlanRequest) => planned.get(JSON.stringify(request)) ?? makePlan(request);

function planOnce(request: PlanRequest): ReturnType<typeof makePlan> {
  const plan = planOf(request);
  planned.set(JSON.stringify(request), plan);
  return plan;
}

function drawnDemo({ now: ms, language }: EarlyQuestion): unknown {
  const now = clockStep(ms);
  const request = demoRequest(now);
  const demo = demoNight(now, request === null ? null : expectOk(planOnce(request)));
  const night = nightOfDemo(demo);
  const asked = { ...night.request, now };
  const standing = standingOf(asked, expectOk(planOnce(asked)));
  return <EarlyAnswer {...{ night, standing }} hours={deviceHours(language)} />;
}

/** Somebody who has been here has a night of their own; a browser that does not say is asked nothing. */
async function isFirstVisit(): Promise<boolean> {
  const databases = await indexedDB.databases();
  return databases.every(({ name }) => name !== DATABASE_NAME);
}

async function answerEarly(question: EarlyQuestion): Promise<void> {
  if (await isFirstVisit()) self.postMessage({ drawn: drawnDemo(question) });
}

// The page's own scripts have waited for these.
self.postMessage({ here: true });
const question = questionOfName(self.name);
answerTasks(self, planOf);
// Where it cannot be, the page answers a little later.
if (question !== null) answerEarly(question).catch(() => undefined);
