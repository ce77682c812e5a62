'use client';

import { TakeIn } from '@/components/share/take-in';
import { Switch } from '@/components/ui/switch';
import type { ClubRecords } from '@/lib/night/club';
import type { UpdateTarget } from '@/lib/share/night-update';
import { racerName } from '@/lib/store/racer-event';
import { listing } from '@/lib/words/listing';
import type { KnownRacer } from './use-known-racers';

type KnownRacersProps = {
  readonly known: readonly KnownRacer[];
  readonly isSame: (label: string) => void;
  readonly records: ClubRecords;
};

/** What is new of racers who are here; where a link does not say whose it is, that is asked first. */
export function KnownRacers({ known, isSame, records }: KnownRacersProps) {
  return (
    <>
      {known.map(({ label, night, target, sure }) => {
        const name = namesAt(records, target);
        return sure ? (
          <TakeIn key={label} night={night} target={target} name={name} />
        ) : (
          <Switch
            key={label}
            label={`${label} is of ${name}, who is here`}
            hint="The link does not say whose it is. On, what is new in it is taken in; off, it is another racer."
            checked={false}
            onChange={() => isSame(label)}
          />
        );
      })}
    </>
  );
}

function namesAt({ event, machines }: ClubRecords, { machineIds }: UpdateTarget): string {
  const named = machines.filter(({ id }) => machineIds.includes(id));
  return listing(named.map(({ id, value }) => racerName(event.value, id, value)));
}
