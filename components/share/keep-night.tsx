'use client';

import { useTable } from '@/components/store/use-table';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { ButtonRow } from '@/components/ui/stack';
import { Way } from '@/components/ui/way';
import { isHere } from '@/lib/share/kept-night';
import type { SharedNight } from '@/lib/share/shared-night';
import { targetOf } from '@/lib/share/update-target';
import { counted } from '@/lib/words/listing';
import styles from './share.module.css';
import { TakeIn } from './take-in';
import { useKeep } from './use-keep';

/** Makes a shared night one's own: as new records beside all others. */
export function KeepNight({ night }: { readonly night: SharedNight }) {
  const events = useTable('events');
  const known = events?.find(({ id }) => id === night.id) ?? null;
  const again = known !== null || (events !== null && isHere(night, events));
  const { keeping, keep, undo } = useKeep(night, again);
  if (keeping.status === 'kept')
    return (
      <Notice
        title="Kept as a night of yours."
        act={
          <ButtonRow>
            <Way kind="firm" href="/">
              Go to the night
            </Way>
            <Button onClick={() => void undo()}>Undo</Button>
          </ButtonRow>
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
      {known === null ? null : (
        <TakeIn night={night} target={targetOf(night, known)} name={night.event.name} />
      )}
      {again && known === null ? (
        <Notice tone="caution" title="This night is here already.">
          <p>{`“${night.event.name}” with the same runs is among your nights. Keeping it again makes a second one, with machines of its own.`}</p>
        </Notice>
      ) : null}
      <ButtonRow>
        <Button
          kind={again ? 'plain' : 'primary'}
          size="large"
          disabled={events === null}
          onClick={() => void keep()}
        >
          {again ? 'Keep it a second time' : 'Keep as my night'}
        </Button>
      </ButtonRow>
      <p className={styles.words}>
        Adds it beside your own nights and machines, as new ones, and shows it on the night page.
      </p>
    </>
  );
}
