import { handle, refusedBut } from '@/app/api/_http/handle';
import { liveFor } from '@/app/api/_live/server-live';
import { tableAnswer } from './table-answer';

export function GET(request: Request): Promise<Response> {
  return handle(request, () => tableAnswer(request, liveFor(request)));
}

export const { DELETE, OPTIONS, PATCH, POST, PUT } = refusedBut('GET');
