'use client';

import { useMemo } from 'react';
import { type ReadingDesk, useReadingDesk } from '@/components/reading/use-reading-desk';
import { type ForecastState, useForecast } from '@/components/weather/use-forecast';
import type { Night } from '@/lib/night/night';
import type { Plan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import type { CallVoice } from '@/lib/words/call';
import type { PlannedNight } from '@/lib/words/what-moved';
import { useWatch, type Watch } from './use-watch';

export type LiveNight = {
  readonly planned: PlannedNight;
  readonly forecast: ForecastState;
  readonly desk: ReadingDesk;
  readonly watch: Watch;
};

type LiveNightOf = {
  readonly night: Night;
  readonly plan: Plan;
  readonly now: Instant;
  readonly voice: CallVoice;
};

/** What keeps a night current while its page is open: the forecast, the readings, and the watch over both. */
export function useLiveNight({ night, plan, now, voice }: LiveNightOf): LiveNight {
  const planned = useMemo(() => ({ night, plan, now, voice }), [night, plan, now, voice]);
  const watched = useMemo(() => ({ ...voice, now }), [voice, now]);
  return {
    planned,
    forecast: useForecast(night.records.event, now),
    desk: useReadingDesk(planned),
    watch: useWatch(night, plan, watched),
  };
}
