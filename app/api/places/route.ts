import { handle, refusedBut } from '@/app/api/_http/handle';
import { searchOf } from '@/app/api/_http/query';
import { weatherFor } from '@/app/api/_weather/server-weather';
import { placeAnswer } from './place-answers';

/** Places stay where they are. */
const PLACES_HOLD = { fresh: 3600, stale: 7 * 24 * 3600 };

export function GET(request: Request): Promise<Response> {
  return handle(request, () => placeAnswer(searchOf(request.url), weatherFor(request)), PLACES_HOLD);
}

export const { DELETE, OPTIONS, PATCH, POST, PUT } = refusedBut('GET');
