import { handle, refusedBut } from '@/app/api/_http/handle';
import { searchOf } from '@/app/api/_http/query';
import { weatherFor } from '@/app/api/_weather/server-weather';
import { observationAnswer } from './observation-answers';

/** Stations report every hour or oftener. */
const OBSERVATIONS_HOLD = { fresh: 60, stale: 300 };

export function GET(request: Request): Promise<Response> {
  return handle(
    request,
    () => observationAnswer(searchOf(request.url), weatherFor(request)),
    OBSERVATIONS_HOLD,
  );
}

export const { DELETE, OPTIONS, PATCH, POST, PUT } = refusedBut('GET');
