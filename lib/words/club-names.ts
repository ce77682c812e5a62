import type { ClubRecords } from '@/lib/night/club';
import { racerName } from '@/lib/store/racer-event';
import type { ClubNames } from '@/lib/words/club';
import { listing } from '@/lib/words/listing';

/** What racers and boxes are called: a box of one's own goes by its owner. */
export function clubNames({ event, machines, boxes }: ClubRecords): ClubNames {
  const racers = new Map(machines.map(({ id, value }) => [id, racerName(event.value, id, value)]));
  const racer = (id: string): string => racers.get(id) ?? 'A racer';
  return {
    racer,
    box: (id) => {
      const shared = boxes.find((box) => box.id === id);
      if (shared === undefined) return racer(id);
      const owners = machines.filter(({ value }) => value.boxId === id).map((machine) => racer(machine.id));
      return shared.value.name === '' ? `The box of ${listing(owners)}` : `Box ${shared.value.name}`;
    },
  };
}
