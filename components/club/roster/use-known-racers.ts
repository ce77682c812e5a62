'use client';

import { useMemo, useState } from 'react';
import type { ClubRecords } from '@/lib/night/club';
import { type NewRacer, racersOfNight, withoutOlder } from '@/lib/share/new-racers';
import type { UpdateTarget } from '@/lib/share/night-update';
import type { OpenedNight } from '@/lib/share/shared-links';
import type { SharedNight } from '@/lib/share/shared-night';
import { targetByName, targetOf } from '@/lib/share/update-target';

/** A shared night of a racer who is on the roster; not `sure` until a person has said it is the same. */
export type KnownRacer = {
  readonly label: string;
  readonly night: SharedNight;
  readonly target: UpdateTarget;
  readonly sure: boolean;
};

type Known = {
  readonly known: readonly KnownRacer[];
  /** All others. */
  readonly racers: readonly NewRacer[];
  readonly isSame: (label: string) => void;
};

/** Parts nights of racers who are here from those of newcomers. */
export function useKnownRacers({ event, machines }: ClubRecords, opened: readonly OpenedNight[]): Known {
  const [same, setSame] = useState<ReadonlySet<string>>(new Set());
  /** Nights of racers who are here: known by their ids, or by a name and a person's word. */
  const known = useMemo(
    () =>
      opened.flatMap(({ label, read }) => {
        if (!read.ok) return [];
        const byId = targetOf(read.value, event);
        const byName = targetByName(read.value, event, machines);
        const sure = isKnown(byId);
        return sure || isKnown(byName)
          ? [{ label, night: read.value, target: sure ? byId : byName, sure: sure || same.has(label) }]
          : [];
      }),
    [opened, event, machines, same],
  );
  const racers = useMemo(() => {
    const whose = (label: string) =>
      known.find((each) => each.label === label && each.sure)?.target.machineIds;
    return withoutOlder(
      opened.flatMap(({ label, read }) =>
        read.ok ? racersOfNight(read.value).filter((_, i) => (whose(label)?.[i] ?? null) === null) : [],
      ),
    );
  }, [opened, known]);
  return { known, racers, isSame: (label) => setSame(new Set([...same, label])) };
}

const isKnown = ({ machineIds }: UpdateTarget): boolean => machineIds.some((id) => id !== null);
