'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { type Location, locate, locateProblemWords } from './locate';
import styles from './weather.module.css';

type LocateButtonProps = { readonly onLocated: (location: Location) => void };

/** Takes the device's own place; where that fails, says why and what else there is. */
export function LocateButton({ onLocated }: LocateButtonProps) {
  const [busy, setBusy] = useState(false);
  const [words, setWords] = useState('');
  async function find() {
    setBusy(true);
    setWords('Finding where this device is…');
    const found = await locate();
    setBusy(false);
    if (found.ok) onLocated(found.value);
    setWords(found.ok ? 'Found: the coordinates are filled in.' : locateProblemWords(found.reason));
  }
  return (
    <div className={styles.part}>
      <Button wide disabled={busy} onClick={() => void find()}>
        Use my location
      </Button>
      <output className={styles.status}>{words}</output>
    </div>
  );
}
