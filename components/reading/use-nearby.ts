'use client';

import { useEffect, useRef, useState } from 'react';
import { askFor } from '@/components/server/ask-for';
import type { PlaceJson } from '@/lib/contract/event';
import type { Metre } from '@/lib/units/quantity';
import { type Offer, offersOf } from '@/lib/weather/stations/offer';
import { stationsLeftOutSentence } from '@/lib/words/observations';

export type Found = {
  readonly offers: readonly Offer[];
  /** What could not be had, in words; '' where nothing is to be said. */
  readonly words: string;
  /** The credit the service asks for. */
  readonly credit: string;
};

type Site = { readonly place: PlaceJson; readonly elevation: Metre };

const NONE = 'No station nearby told anything that can be used. Paste a report, or read a thermometer.';

async function look({ place, elevation }: Site, signal: AbortSignal): Promise<Found> {
  // The schemas come along with the first question.
  const { observationsJsonSchema } = await import('@/lib/weather/observations-json');
  const query = new URLSearchParams({ lat: String(place.latitude), lon: String(place.longitude) });
  const answer = await askFor({
    path: `/api/observations?${query}`,
    reader: observationsJsonSchema,
    instead: 'Type a report or a reading yourself.',
    cancel: signal,
  });
  if (!answer.ok) return { offers: [], words: answer.reason, credit: '' };
  const { leftOut, attribution } = answer.value;
  const offers = await offersOf(answer.value, elevation);
  const words = [stationsLeftOutSentence(leftOut), offers.length === 0 ? NONE : ''];
  return { offers, words: words.filter((part) => part !== '').join(' '), credit: attribution };
}

/** Asks for stations when told to, never by itself; leaving the page ends the question. */
export function useNearby(): {
  readonly found: Found | null;
  readonly busy: boolean;
  readonly ask: (site: Site) => Promise<void>;
} {
  const [found, setFound] = useState<Found | null>(null);
  const [busy, setBusy] = useState(false);
  const running = useRef<AbortController | null>(null);
  useEffect(() => () => running.current?.abort(), []);
  async function ask(site: Site) {
    running.current?.abort();
    const mine = new AbortController();
    running.current = mine;
    setBusy(true);
    const next = await look(site, mine.signal);
    if (mine.signal.aborted) return;
    setBusy(false);
    setFound(next);
  }
  return { found, busy, ask };
}
