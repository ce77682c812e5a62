import type { Problem } from '@/app/api/_http/problem';
import { searchOf } from '@/app/api/_http/query';
import { type LiveDeps, liveNight } from '@/app/api/_live/live-night';
import { sendText } from '@/app/api/_live/send-text';
import { fail, ok, type Result } from '@/lib/result/result';
import { planCsv } from '@/lib/share/plan-csv';

/** The runs of a shared night as a table, with the newest forecast each time it is asked for. */
export async function tableAnswer(request: Request, deps: LiveDeps): Promise<Result<Response, Problem>> {
  const live = await liveNight(searchOf(request.url), deps);
  if (!live.ok) return live;
  const { machines, context, fresh } = live.value;
  const planned = machines.flatMap(({ name, label, standing }) =>
    standing === null ? [] : [{ name, label, plan: standing.plan }],
  );
  if (planned.length === 0)
    return fail({
      status: 503,
      detail:
        'No hours cover these runs now, so there is no table. The calendar of this night still tells the accepted plan.',
      headers: { 'retry-after': '60' },
    });
  return ok(
    sendText({
      text: planCsv(planned, { ...context.voice, now: context.clock }),
      type: 'text/csv',
      file: 'heavy-air.csv',
      fresh,
      ifNoneMatch: request.headers.get('if-none-match'),
    }),
  );
}
