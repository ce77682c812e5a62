import type { Briefing } from '@/lib/club/briefing';
import type { ClubRecords } from '@/lib/night/club';
import type { ClubNames } from './club';
import { counted } from './listing';

/** Some of the racers under one name: a class, those of one box, a single one. */
export type ClubGroup = { readonly value: string; readonly label: string; readonly ids: readonly string[] };

/** Everybody first, then classes, shared boxes and racers. */
export function clubGroups({ event, machines }: ClubRecords, names: ClubNames): readonly ClubGroup[] {
  const ids = machines.map(({ id }) => id);
  const { club } = event.value;
  const inClass = (classId: string) => ids.filter((id) => club?.racers[id]?.classId === classId);
  const boxIds = [...new Set(machines.flatMap(({ value }) => value.boxId ?? []))];
  const withBox = (boxId: string) =>
    machines.filter(({ value }) => value.boxId === boxId).map(({ id }) => id);
  return [
    { value: '', label: ids.length === 1 ? 'All' : `All ${ids.length} racers`, ids },
    ...(club?.classes ?? []).map(({ id, name }) => group(`class:${id}`, `Class ${name}`, inClass(id))),
    ...boxIds.map((id) => group(`box:${id}`, names.box(id), withBox(id))),
    ...ids.map((id) => ({ value: id, label: names.racer(id), ids: [id] })),
  ].filter((each) => each.value === '' || each.ids.length > 0);
}

const group = (value: string, name: string, ids: readonly string[]): ClubGroup => ({
  value,
  label: `${name}: ${counted(ids.length, 'racer')}`,
  ids,
});

/** The part of a briefing that concerns some of the racers. */
export function briefingOf(briefing: Briefing, ids: readonly string[]): Briefing {
  const wanted = new Set(ids);
  const boxes = briefing.boxes.filter(({ owners }) => owners.some(({ racer }) => wanted.has(racer.id)));
  const lent = new Set(boxes.map(({ boxId }) => boxId));
  return {
    planned: briefing.planned.filter(({ racer }) => wanted.has(racer.id)),
    unplanned: briefing.unplanned.filter(({ racer }) => wanted.has(racer.id)),
    acts: briefing.acts.filter(({ racerId }) => wanted.has(racerId)),
    boxes,
    borrowings: briefing.borrowings.filter(
      ({ want, loans }) => wanted.has(want.racerId) || loans.some(({ fromBox }) => lent.has(fromBox)),
    ),
  };
}
