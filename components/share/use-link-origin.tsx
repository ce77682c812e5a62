'use client';

import { type ReactNode, useEffect, useState } from 'react';
import { askFor } from '@/components/server/ask-for';
import { Notice } from '@/components/ui/notice';
import { Select } from '@/components/ui/select';
import { type OwnAddresses, ownAddressesSchema } from '@/lib/contract/own-addresses';
import { isOwnMachine, LINK_ORIGIN, noOriginWords } from '@/lib/words/link-origin';

export type LinkOrigin = {
  /** What links begin with. */
  readonly origin: string;
  /** Where it leads and what it cannot do, with a choice where there are several; null where there is nothing to say. */
  readonly about: ReactNode;
};

type Found = 'asking' | OwnAddresses | null;

/** The address other devices open this server by: the page's own, or where that means “this computer” one of its network. */
export function useLinkOrigin(): LinkOrigin {
  const { origin, hostname, protocol } = window.location;
  const own = isOwnMachine(hostname);
  const [found, setFound] = useState<Found>(own ? 'asking' : null);
  const [chosen, setChosen] = useState<string | null>(null);
  useEffect(() => {
    if (!own) return;
    const asked = new AbortController();
    const wanted = { path: '/api/addresses', reader: ownAddressesSchema, instead: '', cancel: asked.signal };
    void askFor(wanted).then((answer) => {
      if (!asked.signal.aborted) setFound(answer.ok ? answer.value : null);
    });
    return () => asked.abort();
  }, [own]);
  if (!own) return { origin, about: protocol === 'http:' ? <p>{LINK_ORIGIN.http}</p> : null };
  if (found === 'asking') return { origin, about: <p>{LINK_ORIGIN.asking}</p> };
  const origins = found?.origins ?? [];
  const [first] = origins;
  if (found === null || !found.heardByOthers || first === undefined)
    return { origin, about: <Notice tone="caution" title={noOriginWords(found)} /> };
  return {
    origin: chosen ?? first,
    about: (
      <Notice title={LINK_ORIGIN.swapped}>
        {origins.length < 2 ? (
          <p>{first}</p>
        ) : (
          <Select
            label="Address on the network"
            value={chosen ?? first}
            options={origins.map((value) => ({ value, label: value }))}
            onChange={setChosen}
          />
        )}
        <p>{LINK_ORIGIN.http}</p>
      </Notice>
    ),
  };
}
