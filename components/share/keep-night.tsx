'use client';

import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { Acts } from '@/components/ui/stack';
import { Way } from '@/components/ui/way';
import type { SharedNight } from '@/lib/share/shared-night';
import { counted } from '@/lib/words/listing';
import styles from './share.module.css';
import { useKeep } from './use-keep';

/** Makes a shared night one's own: as new records beside all others. */
export function KeepNight({ night }: { readonly night: SharedNight }) {
  const { keeping, keep, undo, ready } = useKeep(night);
  if (keeping.status === 'kept')
    return (
      <Notice
        title="Kept as a night of yours."
        act={
          <Acts>
            <Way kind="firm" href="/">
              Go to the night
            </Way>
            <Button onClick={() => void undo()}>Undo</Button>
          </Acts>
        }
      >
        <p>{`Added: the event and ${counted(night.machines.length, 'machine')}. Nothing else was touched.`}</p>
      </Notice>
    );
  return (
    <>
      {keeping.status === 'refused' ? (
        <Notice tone="caution" title="It was not kept.">
          <p>
            The store of this browser would not take it, and nothing was added. Reload the page and try again.
          </p>
        </Notice>
      ) : null}
      <Acts>
        <Button kind="primary" size="large" disabled={!ready} onClick={() => void keep()}>
          Keep as my night
        </Button>
      </Acts>
      <p className={styles.words}>
        Adds it beside your own nights and machines, as new ones, and shows it on the night page.
      </p>
    </>
  );
}
