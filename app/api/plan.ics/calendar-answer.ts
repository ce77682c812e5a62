import type { Problem } from '@/app/api/_http/problem';
import { searchOf } from '@/app/api/_http/query';
import { type LiveDeps, liveNight } from '@/app/api/_live/live-night';
import { sendText } from '@/app/api/_live/send-text';
import { ok, type Result } from '@/lib/result/result';
import { calendarText } from '@/lib/share/calendar';

/** The calendar of a shared night, with the newest forecast each time it is asked for. */
export async function calendarAnswer(request: Request, deps: LiveDeps): Promise<Result<Response, Problem>> {
  const live = await liveNight(searchOf(request.url), deps);
  if (!live.ok) return live;
  const { night, machines, context, fresh } = live.value;
  return ok(
    sendText({
      text: calendarText({ name: night.event.name, machines, context }),
      type: 'text/calendar',
      file: 'heavy-air.ics',
      fresh,
      ifNoneMatch: request.headers.get('if-none-match'),
    }),
  );
}
