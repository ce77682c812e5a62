'use client';

import { useDeferredValue, useMemo } from 'react';
import { useNow } from '@/components/night/use-now';
import { Disclosure } from '@/components/ui/disclosure';
import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import type { HourSeries } from '@/lib/hours/series';
import { instant } from '@/lib/time/instant';
import { planRide, type RideRequest } from '@/lib/trail/ride-plan';
import { readRide } from './read-ride';
import { RideAnswer } from './ride-answer';
import { RideForm } from './ride-form';
import type { TrailSectionProps } from './section-props';
import { type RideForecast, useRideForecast } from './use-ride-forecast';

/** One setting for a whole ride, and what it costs where the air is thin. */
export function RideSection({ draft, machine }: TrailSectionProps) {
  const { ride: typed, units } = draft.value;
  const now = useNow();
  const reading = useMemo(() => readRide(typed, units), [typed, units]);
  const forecast = useRideForecast(typed, reading.ride);
  const hours: HourSeries | null = typed.air === 'forecast' ? forecast.series : reading.typedHours;
  const { ride, fall, swapMinutes, consumption } = reading;
  const started = now === null ? null : Math.floor(now / 600_000) * 600_000;
  const request = useMemo<RideRequest | null>(
    () =>
      ride === null || hours === null || fall === null || started === null
        ? null
        : { machine, ride, hours, fall, now: instant(started) },
    [machine, ride, hours, fall, started],
  );
  const asked = useDeferredValue(request);
  const answer = useMemo(() => (asked === null ? null : planRide(asked)), [asked]);
  return (
    <Section title="A ride: one setting for all of it" id="ride">
      {asked === null || answer === null ? (
        <Missing
          errors={Object.values(reading.errors)}
          forecast={typed.air === 'forecast' ? forecast : null}
        />
      ) : (
        <RideAnswer
          request={asked}
          answer={answer}
          swapMinutes={swapMinutes}
          consumption={consumption}
          voice={{ zone: typed.timezone, units }}
        />
      )}
      <Disclosure summary="Change the ride, its hours and its fuel">
        <RideForm draft={draft} reading={reading} forecast={forecast} />
      </Disclosure>
    </Section>
  );
}

type MissingProps = { readonly errors: readonly string[]; readonly forecast: RideForecast | null };

/** What still lacks before there can be an answer. */
function Missing({ errors, forecast }: MissingProps) {
  const [first] = errors;
  const text = first ?? forecast?.problem ?? (forecast?.asking === true ? 'Asking for the forecast…' : null);
  return (
    <Notice title="No answer yet.">
      <p>
        {text ??
          'Fill in the ride below: places with times and heights, or a track, and how cold it will be.'}
      </p>
    </Notice>
  );
}
