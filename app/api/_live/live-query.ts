import * as z from 'zod/mini';
import { fieldsProblem, type Problem } from '@/app/api/_http/problem';
import { parameters } from '@/app/api/_http/query';
import { parseWith } from '@/lib/contract/parse';
import { fail, ok, type Result } from '@/lib/result/result';
import { MOST_FEED_CHARACTERS } from '@/lib/share/addresses';
import { unpackNight } from '@/lib/share/night-link';
import type { SharedNight } from '@/lib/share/shared-night';
import { METRIC_UNITS, type UnitChoice, US_UNITS } from '@/lib/units/choice';
import { linkProblemSentence } from '@/lib/words/link-problems';

const querySchema = z.strictObject({
  d: z.string({ error: 'is missing: expected what a shared link carries behind its #' }),
  units: z._default(z.enum(['metric', 'us']), 'metric'),
});

export type LiveQuery = { readonly night: SharedNight; readonly units: UnitChoice };

/** The night in an address, and the units it is to be told in. */
export function readLiveQuery(search: string): Result<LiveQuery, Problem> {
  const query = parseWith(querySchema, parameters(search));
  if (!query.ok) return fail(fieldsProblem(query.reason, { zone: 'UTC', units: METRIC_UNITS }));
  const { d, units } = query.value;
  if (d.length > MOST_FEED_CHARACTERS)
    return fail({
      status: 414,
      detail: `This night takes ${d.length} characters; an address may carry ${MOST_FEED_CHARACTERS}. Share fewer machines at once.`,
    });
  const night = unpackNight(d);
  if (!night.ok) return fail({ status: 400, detail: linkProblemSentence(night.reason) });
  return ok({ night: night.value, units: units === 'us' ? US_UNITS : METRIC_UNITS });
}
