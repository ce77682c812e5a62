import { POST as tellDone } from '@/app/api/boards/[id]/done/route';
import { PATCH as changeBoard, GET as lookAtBoard, DELETE as takeDown } from '@/app/api/boards/[id]/route';
import { PUT as follow, DELETE as unfollow } from '@/app/api/boards/[id]/subscriptions/route';
import { GET as tellHealth } from '@/app/api/health/route';
import { POST as plan } from '@/app/api/plan/route';
import type { StraightRoute } from './straight';

const BOARD = /^\/api\/boards\/([\w-]+)$/;
const DONE = /^\/api\/boards\/([\w-]+)\/done$/;
const SUBSCRIPTIONS = /^\/api\/boards\/([\w-]+)\/subscriptions$/;

/**
 * What is asked for many times a second, and whatever has an address for each board: the framework keeps the addresses it
 * has seen. Its handlers are those of the routes, so there is one answer whichever way it goes.
 */
export const STRAIGHT_ROUTES: readonly StraightRoute[] = [
  { method: 'GET', path: BOARD, answer: lookAtBoard },
  { method: 'PATCH', path: BOARD, answer: changeBoard },
  { method: 'DELETE', path: BOARD, answer: takeDown },
  { method: 'POST', path: DONE, answer: tellDone },
  { method: 'PUT', path: SUBSCRIPTIONS, answer: follow },
  { method: 'DELETE', path: SUBSCRIPTIONS, answer: unfollow },
  { method: 'GET', path: /^\/api\/health$/, answer: tellHealth },
  { method: 'POST', path: /^\/api\/plan$/, answer: plan },
];
