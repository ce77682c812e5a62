import { handle, refusedBut } from '@/app/api/_http/handle';
import { searchOf } from '@/app/api/_http/query';
import { SERVER_WEATHER, weatherFor } from '@/app/api/_weather/server-weather';
import { forecastAnswers } from './forecast-answers';

const answers = forecastAnswers(SERVER_WEATHER);

export function GET(request: Request): Promise<Response> {
  return handle(request, () => answers(searchOf(request.url), weatherFor(request).caller));
}

export const { DELETE, OPTIONS, PATCH, POST, PUT } = refusedBut('GET');
