import { handle, onlyAllows } from '@/app/api/_http/handle';
import { searchOf } from '@/app/api/_http/query';
import { SERVER_WEATHER } from '@/app/api/_weather/server-weather';
import { historyAnswer } from './history-answers';

export function GET(request: Request): Promise<Response> {
  return handle(request, () => historyAnswer(searchOf(request.url), SERVER_WEATHER));
}

const notAllowed = onlyAllows('GET');

export {
  notAllowed as DELETE,
  notAllowed as OPTIONS,
  notAllowed as PATCH,
  notAllowed as POST,
  notAllowed as PUT,
};
