'use client';

import { useMemo, useState } from 'react';
import { QrCode } from '@/components/share/qr-code';
import { Button } from '@/components/ui/button';
import { Disclosure } from '@/components/ui/disclosure';
import { ButtonRow, Stack } from '@/components/ui/stack';
import { linkAddress } from '@/lib/share/addresses';
import { partsOf } from '@/lib/share/link-parts';
import { codesWords } from '@/lib/words/sending';

type CodesProps = { readonly origin: string; readonly payload: string; readonly name: string };

/**
 * What one code holds beside its address: at the lowest correction a code of some 1,100 bytes has 109 modules to a side
 * (ISO/IEC 18004, version 23), which a phone still reads from a laptop at arm's length (common practice, no source).
 */
const MOST_IN_ONE = 1000;

/** The briefing as codes to scan, one at a time. */
export function Codes({ origin, payload, name }: CodesProps) {
  const links = useMemo(() => {
    const parts = payload.length <= MOST_IN_ONE ? [payload] : partsOf(payload, MOST_IN_ONE);
    return parts.map((part) => linkAddress(origin, part));
  }, [origin, payload]);
  const [at, setAt] = useState(0);
  const shown = Math.min(at, links.length - 1);
  return (
    <Disclosure summary={links.length === 1 ? 'Code to scan' : `${links.length} codes to scan`}>
      <Stack>
        <p>{codesWords(links.length)}</p>
        <QrCode text={links[shown] ?? ''} title={`Code ${shown + 1} of ${links.length}: ${name}`} />
        {links.length === 1 ? null : (
          <ButtonRow>
            <Button onClick={() => setAt((shown + links.length - 1) % links.length)}>Code before</Button>
            <Button kind="primary" onClick={() => setAt((shown + 1) % links.length)}>
              Next code
            </Button>
            <output>{`Code ${shown + 1} of ${links.length}`}</output>
          </ButtonRow>
        )}
      </Stack>
    </Disclosure>
  );
}
