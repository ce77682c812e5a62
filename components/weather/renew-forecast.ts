import { type AskProblem, askApi } from '@/components/server/ask-api';
import { fail, ok, type Result } from '@/lib/result/result';
import type { EventRecord } from '@/lib/store/records';
import type { Store } from '@/lib/store/store-type';
import type { Instant } from '@/lib/time/instant';
import { forecastAddress } from './forecast-question';
import { forecastRecordFrom } from './forecast-record';

export type RenewProblem = AskProblem | { readonly code: 'no-place' } | { readonly code: 'not-kept' };

type Renewal = {
  readonly store: Store;
  readonly eventId: string;
  readonly forecastId: string;
  readonly now: Instant;
};

/** Asks for the hours of a night and keeps them; the page reads them from the store. */
export async function renewForecast(renewal: Renewal): Promise<Result<'kept', RenewProblem>> {
  const { store, eventId, now } = renewal;
  // Read at this moment: the place may have been changed since the question was put.
  const event = (await store.get('events', eventId))?.value;
  const place = event?.event.place;
  const address = event === undefined ? null : forecastAddress(event, now);
  if (event === undefined || place === undefined || address === null) return fail({ code: 'no-place' });
  const answer = await askApi(address);
  if (!answer.ok) return answer;
  // Loaded with the first answer, since it brings the schemas along.
  const { forecastSchema } = await import('@/lib/contract/forecast');
  const parsed = forecastSchema.safeParse(answer.value);
  if (!parsed.success) return fail({ code: 'unreadable' });
  return keep(renewal, (before) => forecastRecordFrom({ answer: parsed.data, place, now, before }));
}

type Make = (
  before: Parameters<typeof forecastRecordFrom>[0]['before'],
) => ReturnType<typeof forecastRecordFrom>;

/** Another tab may write the same forecast at the same time; one of both is enough. */
async function keep({ store, forecastId }: Renewal, make: Make): Promise<Result<'kept', RenewProblem>> {
  const before = await store.get('forecasts', forecastId);
  const written = await store.put(
    'forecasts',
    forecastId,
    make(before?.value ?? null),
    before?.revision ?? null,
  );
  return written.ok || written.reason.code === 'conflict' ? ok('kept') : fail({ code: 'not-kept' });
}

/** Whether an event follows a forecast at all. */
export function followsForecast({ forecastId, event }: EventRecord): boolean {
  return forecastId !== null && event.place !== undefined;
}
