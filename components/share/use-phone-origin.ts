'use client';

import useSWR from 'swr';
import { addressesSchema } from '@/lib/contract/addresses';
import { isOwnMachine, PHONE_WORDS } from '@/lib/words/phone-address';

type PhoneOrigin = {
  /** Where a phone finds this server. */
  readonly origin: string;
  /** What phones can do there, where that is not all; null where it is. */
  readonly words: string | null;
};

/** The address to hand to phones: this page's, or the computer's own on its network where the page says "this computer". */
export function usePhoneOrigin(): PhoneOrigin {
  const { origin, hostname, protocol } = window.location;
  const own = isOwnMachine(hostname);
  const { data } = useSWR<readonly string[], Error>(own ? '/api/addresses' : null, askAddresses, {
    shouldRetryOnError: false,
    revalidateOnFocus: true,
  });
  if (!own) return { origin, words: protocol === 'https:' ? null : PHONE_WORDS.http };
  const [first, ...others] = data ?? [];
  if (first === undefined) return { origin, words: PHONE_WORDS.ownMachine };
  return { origin: first, words: others.length === 0 ? PHONE_WORDS.found : PHONE_WORDS.several(others) };
}

async function askAddresses(path: string): Promise<readonly string[]> {
  const answer = await fetch(path);
  return answer.ok ? addressesSchema.parse(await answer.json()).addresses : [];
}
