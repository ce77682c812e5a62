import { handle, onlyAllows } from '@/app/api/_http/handle';
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

const notAllowed = onlyAllows('GET');

export {
  notAllowed as DELETE,
  notAllowed as OPTIONS,
  notAllowed as PATCH,
  notAllowed as POST,
  notAllowed as PUT,
};
