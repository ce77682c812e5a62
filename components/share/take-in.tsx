'use client';

import { useEffect, useState } from 'react';
import { MergeChanges } from '@/components/backup/merge-changes';
import { SetAsideWay } from '@/components/backup/set-aside-way';
import { useStoreReads } from '@/components/store/store-provider';
import { useWriteAll } from '@/components/store/use-write-all';
import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import { ButtonRow } from '@/components/ui/stack';
import { type UpdateTarget, withNightUpdate } from '@/lib/share/night-update';
import type { SharedNight } from '@/lib/share/shared-night';
import type { Snapshot } from '@/lib/store/store-type';

type TakeInProps = {
  readonly night: SharedNight;
  readonly target: UpdateTarget;
  /** Whose news it is, as a person calls it. */
  readonly name: string;
  readonly onDone?: () => void;
};

/** What is new in a night that was kept before, by name, and the act that takes it in. */
export function TakeIn({ night, target, name, onDone }: TakeInProps) {
  const store = useStoreReads();
  const writeAll = useWriteAll();
  const [snapshot, setSnapshot] = useState<Snapshot | null>(null);
  const [taken, setTaken] = useState(false);
  useEffect(() => {
    void store?.snapshot().then(setSnapshot);
  }, [store]);
  if (snapshot === null) return null;
  const label = `the link of ${name}`;
  const { changes } = withNightUpdate(snapshot, night, target, label);
  if (taken)
    return (
      <Notice title={`What is new of ${name} is taken in.`} act={<SetAsideWay />}>
        <p>What was here and what came stand in one now.</p>
      </Notice>
    );
  const take = async () => {
    const done = await writeAll(
      (current) => withNightUpdate(current, night, target, label).values,
      `What is new of ${name} is taken in.`,
    );
    if (!done.ok) return;
    setTaken(true);
    onDone?.();
  };
  return (
    <Notice
      title={`${name} is here already.`}
      act={
        changes.length === 0 ? null : (
          <ButtonRow>
            <Button kind="primary" onClick={() => void take()}>
              Take in what is new
            </Button>
          </ButtonRow>
        )
      }
    >
      <MergeChanges changes={changes} />
    </Notice>
  );
}
