'use client';

import { NightHead } from '@/components/night/night-head';
import { useNight } from '@/components/night/use-night';
import { useClockZone } from '@/components/store/use-clock-zone';
import { Notice } from '@/components/ui/notice';
import { Way } from '@/components/ui/way';
import { endOfNight } from '@/lib/after/review-night';
import type { Night } from '@/lib/night/night';
import type { Preferences } from '@/lib/store/records';
import type { Instant } from '@/lib/time/instant';
import { notOverSentence } from '@/lib/words/after';
import { Review } from './review';

/** The chosen night once it is over, or why there is nothing to look back on. */
export function AfterRoom() {
  const state = useNight();
  switch (state.status) {
    case 'opening':
      return <p>Looking back…</p>;
    case 'ready':
      return <Over night={state.night} now={state.standing.now} preferences={state.preferences} />;
    default:
      return (
        <Notice tone="caution" title="There is no planned night to look back on.">
          <p>The night’s own page says what is missing.</p>
          <Way href="/">Go to the night</Way>
        </Notice>
      );
  }
}

type OverProps = { readonly night: Night; readonly now: Instant; readonly preferences: Preferences };

function Over({ night, now, preferences }: OverProps) {
  const zone = useClockZone(night.zone);
  const { event, machine } = night.records;
  const end = endOfNight(night.request.runs);
  return (
    <>
      <NightHead level={2} event={event.value} machine={machine.value} />
      {end === null || end > now ? (
        <Notice title="The night is not over.">
          {end === null ? null : <p>{notOverSentence(end, { zone, from: now })}</p>}
          <Way href="/">Go to the night</Way>
        </Notice>
      ) : (
        <Review night={night} end={end} zone={zone} preferences={preferences} />
      )}
    </>
  );
}
