'use client';

import { memo, useMemo } from 'react';
import { TrackView } from '@/components/night/plate/track-view';
import { NewReading, TRACK_READING } from '@/components/reading/reading-dialog';
import { ReadingNewsNotice } from '@/components/reading/reading-news';
import { ChosenElsewhere } from '@/components/store/chosen-elsewhere';
import { useClockZone } from '@/components/store/use-clock-zone';
import { useHash } from '@/components/ui/use-hash';
import { useLiveNight } from '@/components/watch/use-live-night';
import { WatchNotice } from '@/components/watch/watch-notice';
import type { Night } from '@/lib/night/night';
import type { Standing } from '@/lib/standing/standing';
import type { Preferences } from '@/lib/store/records';
import type { CallVoice } from '@/lib/words/call';
import { forecastFaultText } from '@/lib/words/forecast-fault';
import { useNightCopy } from './early/use-night-copy';
import { useActs } from './use-acts';
import { WholeNight } from './whole-night';

type ReadyNightProps = {
  readonly night: Night;
  readonly standing: Standing;
  readonly preferences: Preferences;
};

/**
 * A planned night, whole or as seen at the track. What is being planned anew stays as it was until the plan is there, so
 * it need not be drawn for the change itself.
 */
export const ReadyNight = memo(function ReadyNight({ night, standing, preferences }: ReadyNightProps) {
  const { records } = night;
  const { now } = standing;
  useNightCopy(records, preferences);
  const zone = useClockZone(night.zone);
  const acts = useActs({ night, standing });
  const hash = useHash();
  const { temperature, pressure, elevation } = preferences;
  const { ride } = records.event.value.event;
  const voice = useMemo<CallVoice>(
    () => ({ zone, units: { temperature, pressure, elevation }, now, ride }),
    [zone, temperature, pressure, elevation, now, ride],
  );
  const live = useLiveNight({ night, standing, voice });
  const { problem } = live.forecast;
  const fault = problem === null ? null : forecastFaultText(problem);
  const notices = (
    <>
      <ChosenElsewhere withMachine />
      <WatchNotice
        watch={live.watch}
        onAccept={acts.accept}
        shown={live.desk.news === null && standing.question === null}
      />
      <ReadingNewsNotice desk={live.desk} onAccept={live.watch.differs ? acts.accept : null} />
      <NewReading planned={live.planned} units={voice.units} desk={live.desk} />
    </>
  );
  if (hash === 'track' || hash === TRACK_READING)
    return <TrackView {...{ night, standing, acts, zone, notices, fault }} units={voice.units} />;
  return <WholeNight {...{ night, standing, voice, acts, live, notices, fault }} />;
});
