'use client';

import useSWR from 'swr';
import { askFor, type Wanted } from './ask-for';

type Answered<T> = {
  readonly data: T | undefined;
  readonly asking: boolean;
  /** What went wrong, as a sentence; null where nothing did. */
  readonly problem: string | null;
  readonly again: () => void;
};

const ONCE = { revalidateOnFocus: false, revalidateOnReconnect: false, shouldRetryOnError: false } as const;

/** What our own server says to a question that is asked once; null asks nothing. */
export function useAnswer<T>(
  path: string | null,
  { reader, instead }: Pick<Wanted<T>, 'reader' | 'instead'>,
): Answered<T> {
  const { data, isLoading, isValidating, mutate } = useSWR(
    path,
    () => askFor<T>({ path: path ?? '', reader, instead }),
    ONCE,
  );
  return {
    data: data?.ok ? data.value : undefined,
    asking: isLoading || (isValidating && data?.ok !== true),
    problem: data?.ok === false ? data.reason : null,
    again: () => void mutate(),
  };
}
