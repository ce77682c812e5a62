'use client';

import { useMemo } from 'react';
import { ClubProblems } from '@/components/club/problems';
import type { ClubViewProps } from '@/components/club/view-props';
import { useClockZone } from '@/components/store/use-clock-zone';
import { useAwake } from '@/components/ui/use-awake';
import { airNow } from '@/lib/club/air-now';
import type { Briefing } from '@/lib/club/briefing';
import { hoursProvenance } from '@/lib/hours/provenance';
import type { Instant } from '@/lib/time/instant';
import { localClock } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { airWords } from '@/lib/words/air-now';
import { cautionsFor, SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { clubNames } from '@/lib/words/club-names';
import { ageSinceText, hoursSentence } from '@/lib/words/provenance';
import { LeaveWall } from './leave-wall';
import styles from './wall.module.css';
import { WallBoard } from './wall-board';
import { WallCode } from './wall-code';

/** For the trailer wall: large, without a finger, renewed by itself every half minute and with every change. */
export function WallView({ records, club, now, preferences, briefing }: ClubViewProps) {
  const awake = useAwake();
  const names = useMemo(() => clubNames(records), [records]);
  const { event, demo, board } = records.event.value;
  const zone = useClockZone(event.timezone);
  const told = club.night === null ? null : hoursProvenance(club.night.series);
  return (
    <main className={styles.wall} data-view="track">
      <div className={styles.head}>
        <div className={styles.place}>
          <h1 className={styles.title}>{event.name}</h1>
          {briefing === null ? null : <AirLine briefing={briefing} now={now} units={preferences} />}
          {told === null ? null : (
            <p className={styles.age}>
              {demo ? 'Invented weather' : `Weather: ${ageSinceText(told, now)}`}
              {demo ? null : (
                <span className={styles.source}> {hoursSentence(told, now, { zone, from: now })}</span>
              )}
            </p>
          )}
        </div>
        <div className={styles.corner}>
          {board === undefined ? null : <WallCode board={board} night={event.name} />}
          <p className={styles.clock}>{localClock(now, zone)}</p>
        </div>
      </div>
      <div className={styles.problems}>
        <ClubProblems club={club} zone={zone} units={preferences} briefing={briefing} />
      </div>
      {briefing === null ? (
        <>
          <p className={styles.quiet}>
            {club.racers.length === 0
              ? 'Nobody is on the roster yet. Leave the wall and add racers.'
              : 'Planning…'}
          </p>
          <div className={styles.turning}>
            <LeaveWall />
          </div>
        </>
      ) : (
        <WallBoard briefing={briefing} names={names} zone={zone} now={now} />
      )}
      <div className={styles.foot}>
        <p>{[SWAP_CAUTION_LINE, ...cautionsFor('indoors')].join(' ')}</p>
        {awake === 'cannot' ? <p>This browser cannot keep the screen on; set it in the device.</p> : null}
      </div>
    </main>
  );
}

type AirLineProps = { readonly briefing: Briefing; readonly now: Instant; readonly units: UnitChoice };

/** The air everybody stands in, and where it is going: why the jets change. */
function AirLine({ briefing, now, units }: AirLineProps) {
  const hours = briefing.planned[0]?.plan.hours;
  const air = useMemo(() => (hours === undefined ? null : airNow(hours, now)), [hours, now]);
  if (air === null) return null;
  const words = airWords(air, units);
  return (
    <p className={styles.air} data-testid="air-line">
      <b>{words.temperature}</b> <b>{words.densityAltitude}</b>
      {words.drift === '' ? null : <span className={styles.drift}> {words.drift}</span>}
    </p>
  );
}
