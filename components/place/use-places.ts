'use client';

import useSWR from 'swr';
import { askApi } from '@/components/server/ask-api';
import { fail, ok, type Result } from '@/lib/result/result';
import type { PlacesJson } from '@/lib/weather/places-json';
import type { AskProblem } from '@/lib/words/ask-problem';
import { useSettled } from './use-settled';

export type FoundPlace = PlacesJson['places'][number];
type Answer = Result<PlacesJson, AskProblem>;

export type PlacesState =
  | { readonly status: 'nothing-asked' }
  | { readonly status: 'asking' }
  | { readonly status: 'found'; readonly answer: PlacesJson }
  | { readonly status: 'failed'; readonly problem: AskProblem };

const SETTLED_MS = 350;
/** The server wants two letters to search by. */
const LEAST_LETTERS = 2;

/** Places and heights do not change while a form is open. */
const ONCE = { revalidateOnFocus: false, revalidateIfStale: false, keepPreviousData: true } as const;

const placesPath = (name: string): string => `/api/places?${new URLSearchParams({ q: name })}`;

async function askPlaces(path: string): Promise<Answer> {
  const answer = await askApi(path);
  if (!answer.ok) return answer;
  const { placesJsonSchema } = await import('@/lib/weather/places-json');
  const parsed = placesJsonSchema.safeParse(answer.value);
  return parsed.success ? ok(parsed.data) : fail({ code: 'unreadable' });
}

/** The places of a name, asked when the typing pauses. */
export function usePlaces(name: string): PlacesState {
  const wanted = name.trim();
  const settled = useSettled(wanted, SETTLED_MS);
  const asks = settled.length >= LEAST_LETTERS;
  const { data, isLoading } = useSWR<Answer>(asks ? placesPath(settled) : null, askPlaces, ONCE);
  if (wanted.length < LEAST_LETTERS) return { status: 'nothing-asked' };
  return stateOf(data, isLoading || settled !== wanted);
}

/** A name that somebody sent off; each press is a question of its own, also for the name of before. */
export type Asked = { readonly name: string; readonly press: number };

/** The places of a name that was sent off; null asks nothing. */
export function usePlacesNamed(asked: Asked | null): PlacesState {
  const { data, isLoading } = useSWR<Answer>(
    asked === null ? null : [placesPath(asked.name), asked.press],
    ([path]: [string, number]) => askPlaces(path),
    ONCE,
  );
  return asked === null ? { status: 'nothing-asked' } : stateOf(data, isLoading);
}

/** The ground at a point, asked when the typing pauses; null asks nothing. */
export function useGround(
  point: { readonly latitude: number; readonly longitude: number } | null,
): PlacesState {
  const path =
    point === null
      ? ''
      : `/api/places?${new URLSearchParams({ lat: point.latitude.toFixed(4), lon: point.longitude.toFixed(4) })}`;
  const settled = useSettled(path, SETTLED_MS);
  const { data, isLoading } = useSWR<Answer>(settled === '' ? null : settled, askPlaces, {
    ...ONCE,
    // The height of the place before must not stand beside another.
    keepPreviousData: false,
  });
  if (path === '') return { status: 'nothing-asked' };
  return stateOf(data, isLoading || settled !== path);
}

function stateOf(data: Answer | undefined, asking: boolean): PlacesState {
  if (asking || data === undefined) return { status: 'asking' };
  return data.ok ? { status: 'found', answer: data.value } : { status: 'failed', problem: data.reason };
}
