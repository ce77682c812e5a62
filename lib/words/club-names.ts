import type { ClubRecords } from '@/lib/night/club';
import { rosterNames } from '@/lib/store/roster-names';
import type { ClubNames } from '@/lib/words/club';
import { isolated } from '@/lib/words/isolated';
import { listing } from '@/lib/words/listing';
import { nameTogether } from '@/lib/words/together';

/** What racers and boxes are called: a box of one's own goes by its owner. */
export function clubNames({ event, machines, boxes }: ClubRecords): ClubNames {
  const racers = rosterNames(event.value, machines);
  const racer = (id: string): string => isolated(nameTogether(racers.get(id) ?? 'A racer'));
  return {
    racer,
    box: (id) => {
      const shared = boxes.find((box) => box.id === id);
      if (shared === undefined) return racer(id);
      const owners = machines.filter(({ value }) => value.boxId === id).map((machine) => racer(machine.id));
      return shared.value.name === ''
        ? `The box of ${listing(owners)}`
        : `Box ${isolated(shared.value.name)}`;
    },
  };
}
