import { handle, onlyAllows } from '@/app/api/_http/handle';
import { liveFor } from '@/app/api/_live/server-live';
import { tableAnswer } from './table-answer';

export function GET(request: Request): Promise<Response> {
  return handle(request, () => tableAnswer(request, liveFor(request)));
}

const notAllowed = onlyAllows('GET');

export {
  notAllowed as DELETE,
  notAllowed as OPTIONS,
  notAllowed as PATCH,
  notAllowed as POST,
  notAllowed as PUT,
};
