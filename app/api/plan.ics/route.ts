import { handle, refusedBut } from '@/app/api/_http/handle';
import { liveFor } from '@/app/api/_live/server-live';
import { calendarAnswer } from './calendar-answer';

export function GET(request: Request): Promise<Response> {
  return handle(request, () => calendarAnswer(request, liveFor(request)));
}

export const { DELETE, OPTIONS, PATCH, POST, PUT } = refusedBut('GET');
