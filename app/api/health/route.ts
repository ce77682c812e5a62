import { handle, onlyAllows } from '@/app/api/_http/handle';
import { ok } from '@/lib/result/result';

/** Answers as long as the process does; nothing outside is asked, so a load balancer can ask often. */
export function GET(): Promise<Response> {
  return handle(async () => ok({ status: 'ok' }));
}

const notAllowed = onlyAllows('GET');

export { notAllowed as DELETE, notAllowed as PATCH, notAllowed as POST, notAllowed as PUT };
