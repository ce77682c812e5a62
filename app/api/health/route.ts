import { onlyAllows } from '@/app/api/_http/handle';

/** Answers as long as the process does; nothing outside is asked and nothing is counted, so it can be asked often. */
export function GET(): Response {
  return Response.json({ status: 'ok' }, { headers: { 'cache-control': 'no-store' } });
}

const notAllowed = onlyAllows('GET');

export {
  notAllowed as DELETE,
  notAllowed as OPTIONS,
  notAllowed as PATCH,
  notAllowed as POST,
  notAllowed as PUT,
};
