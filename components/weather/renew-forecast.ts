import { askApi } from '@/components/server/ask-api';
import type { StoreReads } from '@/components/store/store-provider';
import type { QuietWrite } from '@/components/store/use-quiet-write';
import { forecastAddress } from '@/lib/night/forecast-question';
import { forecastRecordFrom } from '@/lib/night/forecast-record';
import { fail, ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import type { ForecastFault } from '@/lib/words/forecast-fault';

type Renewal = {
  readonly store: StoreReads;
  readonly write: QuietWrite;
  readonly eventId: string;
  readonly forecastId: string;
  readonly now: Instant;
};

/** Asks for the hours of a night and keeps them; the page reads them from the store. */
export async function renewForecast(renewal: Renewal): Promise<Result<'kept', ForecastFault>> {
  const { store, write, eventId, forecastId, now } = renewal;
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
  const kept = await write({ table: 'forecasts', id: forecastId }, (before) =>
    forecastRecordFrom({ answer: parsed.data, place, now, before }),
  );
  return kept ? ok('kept') : fail({ code: 'not-kept' });
}
