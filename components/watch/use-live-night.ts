'use client';

import { useMemo } from 'react';
import { type ReadingDesk, useReadingDesk } from '@/components/reading/use-reading-desk';
import { type ForecastState, useForecast } from '@/components/weather/use-forecast';
import type { CallVoice } from '@/lib/words/call';
import type { PlannedNight } from '@/lib/words/what-moved';
import { useWatch, type Watch, type Watched } from './use-watch';

export type LiveNight = {
  readonly planned: PlannedNight;
  readonly forecast: ForecastState;
  readonly desk: ReadingDesk;
  readonly watch: Watch;
};

type LiveNightOf = Watched & { readonly voice: CallVoice };

/** What keeps a night current while its page is open: the forecast, the readings, and the watch over both. */
export function useLiveNight({ night, standing, voice }: LiveNightOf): LiveNight {
  const { plan, now } = standing;
  const planned = useMemo(() => ({ night, plan, now, voice }), [night, plan, now, voice]);
  return {
    planned,
    forecast: useForecast(night.records.event, now),
    desk: useReadingDesk(planned, { tellsMoves: true }),
    watch: useWatch({ night, standing, voice }),
  };
}
