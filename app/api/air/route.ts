import { handle, refusedBut } from '@/app/api/_http/handle';
import { fieldsProblem } from '@/app/api/_http/problem';
import { readJsonBody } from '@/app/api/_http/read-json-body';
import { fail } from '@/lib/result/result';
import { METRIC_UNITS } from '@/lib/units/choice';
import { airAnswers } from './air-answers';

/** Enough for 100,000 states written plainly. */
const MOST_BYTES = 8_000_000;

export function POST(request: Request): Promise<Response> {
  return handle(request, async () => {
    const body = await readJsonBody(request, MOST_BYTES);
    if (!body.ok) return body;
    const airs = airAnswers(body.value);
    return airs.ok ? airs : fail(fieldsProblem(airs.reason, { zone: 'UTC', units: METRIC_UNITS }));
  });
}

export const { DELETE, GET, OPTIONS, PATCH, PUT } = refusedBut('POST');
