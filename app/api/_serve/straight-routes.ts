import { GET as lookAtBoard } from '@/app/api/boards/[id]/route';
import { GET as tellHealth } from '@/app/api/health/route';
import { POST as plan } from '@/app/api/plan/route';
import type { StraightRoute } from './straight';

/** What is asked for many times a second. Its handlers are those of the routes, so there is one answer whichever way it goes. */
export const STRAIGHT_ROUTES: readonly StraightRoute[] = [
  { method: 'GET', path: /^\/api\/boards\/([\w-]+)$/, answer: lookAtBoard },
  { method: 'GET', path: /^\/api\/health$/, answer: tellHealth },
  { method: 'POST', path: /^\/api\/plan$/, answer: plan },
];
