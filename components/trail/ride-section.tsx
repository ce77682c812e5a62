'use client';

import { useDeferredValue, useMemo } from 'react';
import { useClockZone } from '@/components/store/use-clock-zone';
import { useNow } from '@/components/store/use-now';
import { Disclosure } from '@/components/ui/disclosure';
import { Notice } from '@/components/ui/notice';
import { Section } from '@/components/ui/section';
import type { HourSeries } from '@/lib/hours/series';
import { instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { planRide, type RideRequest } from '@/lib/trail/ride-plan';
import { exampleRideWords } from '@/lib/words/example-ride';
import { exampleParts } from './example-ride';
import { readRide } from './read-ride';
import { RideAnswer } from './ride-answer';
import { RideForm } from './ride-form';
import type { TrailSectionProps } from './section-props';
import { type AskedHours, useRideForecast } from './use-ride-forecast';
import { useRidePast } from './use-ride-past';

/** The answer lags behind the typing, so the zone it is told in stays with it. */
type Question = { readonly zone: ClockZone; readonly request: RideRequest };

/** One setting for a whole ride, and what it costs where the air is thin. */
export function RideSection({ draft, machine, invented }: TrailSectionProps) {
  const { ride: typed, units } = draft.value;
  const now = useNow();
  const reading = useMemo(() => readRide(typed, units), [typed, units]);
  const started = now === null ? null : instant(Math.floor(now / 600_000) * 600_000);
  const forecast = useRideForecast(typed, reading.ride, started);
  const past = useRidePast(typed, reading.ride, { zone: reading.zone, units, now: started });
  const asking = typed.air === 'past' ? past : forecast;
  const hours: HourSeries | null = typed.air === 'typed' ? reading.typedHours : asking.series;
  const clockZone = useClockZone(typed.timezone);
  const { zone, ride, fall, swapMinutes, consumption } = reading;
  const question = useMemo<Question | null>(
    () =>
      zone === null || ride === null || hours === null || fall === null || started === null
        ? null
        : { zone: clockZone, request: { machine, ride, hours, fall, now: started } },
    [zone, clockZone, machine, ride, hours, fall, started],
  );
  const asked = useDeferredValue(question);
  const answer = useMemo(() => (asked === null ? null : planRide(asked.request)), [asked]);
  const example = invented ? null : exampleRideWords(exampleParts(typed, units));
  return (
    <Section title="A ride: one setting for all of it" id="ride">
      {example === null ? null : (
        <Notice tone="caution" title={example.title}>
          <p>{example.text}</p>
        </Notice>
      )}
      {example?.answer === false ? null : asked === null || answer === null ? (
        <Missing errors={Object.values(reading.errors)} asked={typed.air === 'typed' ? null : asking} />
      ) : (
        <RideAnswer
          request={asked.request}
          answer={answer}
          swapMinutes={swapMinutes}
          consumption={consumption}
          voice={{ zone: asked.zone, units }}
        />
      )}
      <Disclosure summary="Change the ride, its hours and its fuel">
        <RideForm draft={draft} reading={reading} asked={asking} />
      </Disclosure>
    </Section>
  );
}

type MissingProps = { readonly errors: readonly string[]; readonly asked: AskedHours | null };

/** What still lacks before there can be an answer. */
function Missing({ errors, asked }: MissingProps) {
  const [first] = errors;
  const text = first ?? asked?.problem ?? (asked?.asking === true ? 'Asking the weather service…' : null);
  return (
    <Notice title="No answer yet.">
      <p>
        {text ??
          'Fill in the ride below: places with times and heights, or a track, and how cold it will be.'}
      </p>
    </Notice>
  );
}
