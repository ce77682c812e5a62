import type { AirNow } from '@/lib/club/air-now';
import type { Briefing } from '@/lib/club/briefing';
import { dueTogether } from '@/lib/club/due';
import { addMinutes, type Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { airWords } from './air-now';
import type { ClubNames } from './club';
import { capital, listing } from './listing';
import { clockText } from './times';

type Speaker = {
  /** null where the hours do not reach. */
  readonly air: AirNow | null;
  readonly names: Pick<ClubNames, 'racer'>;
  readonly zone: ClockZone;
  readonly now: Instant;
  readonly units: UnitChoice;
};

/** How far ahead one hour's announcement looks: the next one comes then. */
const AHEAD_MINUTES = 60;

/** One hour's announcement, to be read out: the air, where it went since the last one, and who is due until the next. */
export function announcement(briefing: Briefing, { air, names, zone, now, units }: Speaker): string {
  const clock = { zone };
  const until = addMinutes(now, AHEAD_MINUTES);
  const due = dueTogether(briefing.acts.filter(({ at }) => at > now && at <= until));
  const open = briefing.planned.filter(({ standing }) => standing.question !== null);
  return [
    `It is ${clockText(now, clock)}.`,
    ...airSentences(air, units),
    ...due.map(
      ({ at, acts }) =>
        `Due by ${clockText(at, clock)}: ${listing([...new Set(acts.map(({ racerId }) => names.racer(racerId)))])}.`,
    ),
    ...(due.length === 0 ? [`Nobody has to swap before ${clockText(until, clock)}.`] : []),
    ...(open.length === 0
      ? []
      : [`Tell the club what is in: ${listing(open.map(({ racer }) => names.racer(racer.id)))}.`]),
  ].join(' ');
}

function airSentences(air: AirNow | null, units: UnitChoice): readonly string[] {
  if (air === null) return ['There are no hours for now, so nothing can be said of the air.'];
  const { temperature, densityAltitude, drift } = airWords(air, units);
  const spoken = (words: string): string => words.replaceAll('DA ', 'density altitude ');
  return [
    `${temperature}, ${spoken(densityAltitude)}.`,
    drift === '' ? 'What it was an hour ago is not known.' : `${capital(spoken(drift))}.`,
  ];
}
