/// <reference lib="webworker" />
// The program of the page's worker: it plans, and before it is asked to it draws the first screen: of the night that was
// shown last, or for who comes for the first time. The build bundles it into a file of its own, with
// .scripts/plain-jsx.mjs in React's place.
import { demoNight, demoRequest, nightOfDemo } from '@/lib/night/demo-night';
import { isLiving } from '@/lib/night/living-demo';
import { type Night, nightFrom } from '@/lib/night/night';
import { shownNightFromJson } from '@/lib/night/shown-night';
import { keepingPlanner } from '@/lib/plan/make-plan';
import type { PlanRequest } from '@/lib/plan/types';
import { type EarlyQuestion, questionOfName } from '@/lib/planner/early-start';
import { answerTasks } from '@/lib/planner/tasks';
import { expectOk } from '@/lib/result/result';
import { standingOf } from '@/lib/standing/standing';
import { DATABASE_NAME } from '@/lib/store/database-name';
import { DEFAULT_PREFERENCES } from '@/lib/store/default-preferences';
import type { Preferences } from '@/lib/store/records';
import { deviceHours } from '@/lib/time/device-hours';
import { clockStep, type Instant } from '@/lib/time/instant';
import { EarlyAnswer } from './early-answer';

declare const self: DedicatedWorkerGlobalScope;

/** What was planned for the early answer, for the page that asks the same a moment later. */
const planned = new Map<string, ReturnType<typeof planAgain>>();

/** What the worker is asked is mostly the night it was asked about before, with other jets in. */
const planAgain = keepingPlanner();

const planOf = (request: PlanRequest) => planned.get(JSON.stringify(request)) ?? planAgain(request);

function planOnce(request: PlanRequest): ReturnType<typeof planAgain> {
  const plan = planOf(request);
  planned.set(JSON.stringify(request), plan);
  return plan;
}

function drawnDemo(now: Instant, language: string): unknown {
  const request = demoRequest(now);
  const demo = demoNight(now, request === null ? null : expectOk(planOnce(request)));
  return drawn(nightOfDemo(demo), now, DEFAULT_PREFERENCES, language);
}

/** null where the page has to do something first: it gives the invented night another date. */
function drawnKept(now: Instant, language: string, kept: string): unknown {
  const { records, preferences } = shownNightFromJson(kept);
  const event = records.event.value;
  return event.demo && !isLiving(event, now)
    ? null
    : drawn(expectOk(nightFrom(records)), now, preferences, language);
}

function drawn(night: Night, now: Instant, preferences: Preferences, language: string): unknown {
  const asked = { ...night.request, now };
  const standing = standingOf(asked, expectOk(planOnce(asked)));
  const { clock = 'auto', temperature, pressure, elevation } = preferences;
  return (
    <EarlyAnswer
      {...{ night, standing }}
      hours={clock === 'auto' ? deviceHours(language) : clock}
      units={{ temperature, pressure, elevation }}
    />
  );
}

/** Somebody who has been here has a night of their own; a browser that does not say is asked nothing. */
async function isFirstVisit(): Promise<boolean> {
  const databases = await indexedDB.databases();
  return databases.every(({ name }) => name !== DATABASE_NAME);
}

async function answerEarly({ now: ms, language, kept }: EarlyQuestion): Promise<void> {
  const now = clockStep(ms);
  const first = await isFirstVisit();
  // A copy of what is no longer there is none.
  if (first !== (kept === null)) return;
  const answer = kept === null ? drawnDemo(now, language) : drawnKept(now, language, kept);
  if (answer !== null) self.postMessage({ drawn: answer });
}

// The page's own scripts have waited for these.
self.postMessage({ here: true });
const question = questionOfName(self.name);
answerTasks(self, planOf);
// Where it cannot be, the page answers a little later.
if (question !== null) answerEarly(question).catch(() => undefined);
