import { refusedBut } from '@/app/api/_http/handle';

/** Answers as long as the process does; nothing outside is asked and nothing is counted, so it can be asked often. */
export function GET(): Response {
  return Response.json({ status: 'ok' }, { headers: { 'cache-control': 'no-store' } });
}

export const { DELETE, OPTIONS, PATCH, POST, PUT } = refusedBut('GET');
