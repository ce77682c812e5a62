'use client';

import dynamic from 'next/dynamic';
import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Section } from '@/components/ui/section';
import { ButtonRow } from '@/components/ui/stack';
import { type Instant, instant } from '@/lib/time/instant';
import { SENDING } from '@/lib/words/sending';
import type { SendProps } from './send-panel';

/** What packs links and draws codes and pictures comes when it is asked for. */
const SendPanel = dynamic(() => import('./send-panel').then((module) => module.SendPanel), {
  ssr: false,
  loading: () => <p>Packing the briefing…</p>,
});

/** The ways the briefing leaves this page: sent, or said. */
export function SendSection(props: SendProps) {
  const [sharedAt, setSharedAt] = useState<Instant | null>(null);
  return (
    <Section title="Send and say" id="send">
      {sharedAt === null ? (
        <>
          <p>{SENDING.offer}</p>
          <ButtonRow>
            <Button onClick={() => setSharedAt(instant(Date.now()))}>Send the briefing</Button>
          </ButtonRow>
        </>
      ) : (
        <SendPanel {...props} sharedAt={sharedAt} />
      )}
    </Section>
  );
}
