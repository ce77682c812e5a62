import type { EventJson } from '@/lib/contract/event';
import { SAME_PLACE_M } from '@/lib/plan/judgement';
import type { EventRecord } from '@/lib/store/records';
import { distanceM } from '@/lib/weather/distance';

/** The record for an event at a place: what a night came with about another place does not come along. */
export function withoutOffsetElsewhere(record: EventRecord, place: EventJson['place']): EventRecord {
  const before = record.event.place;
  const stays = before !== undefined && place !== undefined && distanceM(before, place) <= SAME_PLACE_M;
  if (stays) return record;
  const { placeOffset: _, withoutPlaceOffset: __, ...rest } = record;
  return rest;
}
