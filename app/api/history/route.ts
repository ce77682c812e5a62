import { handle, refusedBut } from '@/app/api/_http/handle';
import { searchOf } from '@/app/api/_http/query';
import { weatherFor } from '@/app/api/_weather/server-weather';
import { historyAnswer } from './history-answers';

/** The past does not change, but the archive's last days do. */
const PAST_HOLDS = { fresh: 3600, stale: 7 * 24 * 3600 };

export function GET(request: Request): Promise<Response> {
  return handle(request, () => historyAnswer(searchOf(request.url), weatherFor(request)), PAST_HOLDS);
}

export const { DELETE, OPTIONS, PATCH, POST, PUT } = refusedBut('GET');
