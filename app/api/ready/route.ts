import { refusedBut } from '@/app/api/_http/handle';
import { VERSION } from '@/lib/contract/version';
import { CHECKS, outcomes, readBuiltFrom } from './checks';

export const dynamic = 'force-dynamic';

const builtFrom = readBuiltFrom();

/** Whether requests may be sent here, and what is running. Not counted, so that it can be asked often. */
export async function GET(): Promise<Response> {
  const checks = await outcomes(CHECKS);
  const ready = Object.values(checks).every(Boolean);
  const body = {
    ready,
    checks,
    version: VERSION,
    commit: builtFrom?.commit ?? null,
    build: builtFrom?.buildId ?? null,
  };
  return Response.json(body, { status: ready ? 200 : 503, headers: { 'cache-control': 'no-store' } });
}

export const { DELETE, OPTIONS, PATCH, POST, PUT } = refusedBut('GET');
