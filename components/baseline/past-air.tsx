'use client';

import { useEffect, useRef, useState } from 'react';
import { deviceZone } from '@/components/event/zones';
import { FindTown } from '@/components/place/find-town';
import type { FoundPlace } from '@/components/place/use-places';
import { askFor } from '@/components/server/ask-for';
import { useClockFace } from '@/components/store/use-clock-zone';
import { Button } from '@/components/ui/button';
import { Columns } from '@/components/ui/stack';
import { TextField } from '@/components/ui/text-field';
import type { AirStateJson } from '@/lib/contract/air';
import { clockOf } from '@/lib/fields/clock-text';
import { fromLocal } from '@/lib/time/local';
import { isoUtc } from '@/lib/time/zone';
import { withoutDust } from '@/lib/units/entry-text';
import { pastAirJsonSchema } from '@/lib/weather/history-json';
import { clockProblemSentence } from '@/lib/words/clock-problems';

export type PastAirFound = { readonly air: AirStateJson; readonly date: string };

type PastAirProps = { readonly onFound: (found: PastAirFound) => void };

/** The air at a place and a past hour, looked up: for jets that were proven when nobody wrote it down. */
export function PastAirFields({ onFound }: PastAirProps) {
  const [date, setDate] = useState('');
  const [clock, setClock] = useState('');
  const face = useClockFace();
  const lookup = useLookup();
  const find = async (place: FoundPlace) => {
    const found = await lookup.run((signal) => pastAir({ place, date, clock }, signal));
    if (found !== null) onFound({ air: found, date });
  };
  return (
    <FindTown label="Town near the track" instead={INSTEAD}>
      {(place) => (
        <>
          <Columns>
            <TextField label="Date" type="date" value={date} onChange={setDate} />
            <TextField
              label="Time of day there"
              placeholder={face('18:30')}
              autoComplete="off"
              hint={place.timezone ?? `Zone unknown: ${deviceZone()}`}
              value={clock}
              onChange={setClock}
            />
          </Columns>
          <Button disabled={lookup.busy} onClick={() => void find(place)}>
            Look the air up
          </Button>
          <p role="status">{lookup.busy ? 'Asking…' : lookup.problem}</p>
        </>
      )}
    </FindTown>
  );
}

type Answer<T> = { readonly found: T } | { readonly problem: string };

/** One question at a time: a new one, or leaving the page, ends the one before. */
function useLookup() {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);
  async function run<T>(ask: (signal: AbortSignal) => Promise<Answer<T>>): Promise<T | null> {
    running.current?.abort();
    const mine = new AbortController();
    running.current = mine;
    setBusy(true);
    const answer = await ask(mine.signal);
    if (mine.signal.aborted) return null;
    setBusy(false);
    setProblem('problem' in answer ? answer.problem : '');
    return 'found' in answer ? answer.found : null;
  }
  return { busy, problem, run };
}

const INSTEAD = 'The past cannot be looked up without it; type the air yourself.';

type Moment = { readonly place: FoundPlace; readonly date: string; readonly clock: string };

async function pastAir({ place, date, clock }: Moment, signal: AbortSignal): Promise<Answer<AirStateJson>> {
  const at = fromLocal(date, clockOf(clock) ?? clock, place.timezone ?? deviceZone());
  if (!at.ok) return { problem: clockProblemSentence(at.reason) };
  const query = new URLSearchParams({
    lat: String(place.latitude),
    lon: String(place.longitude),
    at: isoUtc(at.value.at),
  });
  const path = `/api/history?${query}`;
  const answer = await askFor({ path, reader: pastAirJsonSchema, instead: INSTEAD, cancel: signal });
  if (!answer.ok) return { problem: answer.reason };
  const { temperatureC, pressureHpa, elevationM, relativeHumidity } = answer.value;
  return {
    found: {
      temperatureC: withoutDust(temperatureC),
      pressureHpa: withoutDust(pressureHpa),
      elevationM: withoutDust(elevationM),
      relativeHumidity: withoutDust(Math.min(1, Math.max(0, relativeHumidity))),
    },
  };
}
