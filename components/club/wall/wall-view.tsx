'use client';

import { useMemo } from 'react';
import { Change } from '@/components/club/change';
import { ClubProblems } from '@/components/club/problems';
import type { ClubViewProps } from '@/components/club/view-props';
import { DataLine } from '@/components/night/plate/data-line';
import { useClockZone } from '@/components/store/use-clock-zone';
import { useAwake } from '@/components/ui/use-awake';
import type { Briefing } from '@/lib/club/briefing';
import type { Instant } from '@/lib/time/instant';
import { type ClockZone, localClock } from '@/lib/time/zone';
import { cautionsFor, SWAP_CAUTION_LINE } from '@/lib/words/cautions';
import { alarmText, type ClubNames, clubActWords, isLoud } from '@/lib/words/club';
import { clubNames } from '@/lib/words/club-names';
import { countdown } from '@/lib/words/countdown';
import { planClock } from '@/lib/words/runs';
import styles from './wall.module.css';
import { WallRacers } from './wall-racers';

/** As many as can be read across a trailer. */
const ACTS_SHOWN = 8;

/** For the trailer wall: large, without a finger, renewed by itself every half minute and with every change. */
export function WallView({ records, club, now, preferences, briefing }: ClubViewProps) {
  const awake = useAwake();
  const names = useMemo(() => clubNames(records), [records]);
  const { event, demo } = records.event.value;
  const zone = useClockZone(event.timezone);
  return (
    <main className={styles.wall} data-view="track">
      <div className={styles.head}>
        <h1 className={styles.title}>{event.name}</h1>
        <p className={styles.clock}>{localClock(now, zone)}</p>
        <a className={styles.leave} href="#briefing">
          Leave the wall
        </a>
      </div>
      <ClubProblems club={club} zone={zone} units={preferences} briefing={briefing} />
      {briefing === null ? (
        <p className={styles.quiet}>
          {club.racers.length === 0
            ? 'Nobody is on the roster yet. Leave the wall and add racers.'
            : 'Planning...'}
        </p>
      ) : (
        <>
          <Alarms briefing={briefing} names={names} />
          <div className={styles.parts}>
            <NextActs briefing={briefing} names={names} zone={zone} now={now} />
            <WallRacers briefing={briefing} names={names} />
          </div>
        </>
      )}
      <p className={styles.foot}>{[SWAP_CAUTION_LINE, ...cautionsFor('indoors')].join(' ')}</p>
      {club.night === null ? null : (
        <div className={styles.foot}>
          <DataLine
            series={club.night.series}
            demo={demo}
            readings={club.night.readings}
            now={now}
            zone={zone}
          />
        </div>
      )}
      {awake === 'cannot' ? (
        <p className={styles.foot}>This browser cannot keep the screen on; set it in the device.</p>
      ) : null}
    </main>
  );
}

type PartProps = { readonly briefing: Briefing; readonly names: ClubNames };

function Alarms({ briefing, names }: PartProps) {
  const loud = briefing.planned.filter(({ standing }) => isLoud(standing));
  if (loud.length === 0) return null;
  return (
    <ul className={styles.alarms}>
      {loud.map(({ racer, standing }) => (
        <li key={racer.id}>
          <span className={styles.lean}>{standing.dangers.length > 0 ? 'do not race' : 'not told'}</span>{' '}
          {names.racer(racer.id)}: {alarmText(standing)}
        </li>
      ))}
    </ul>
  );
}

type NextActsProps = PartProps & { readonly zone: ClockZone; readonly now: Instant };

function NextActs({ briefing, names, zone, now }: NextActsProps) {
  const plans = new Map(briefing.planned.map(({ racer, plan }) => [racer.id, plan]));
  const shown = briefing.acts.slice(0, ACTS_SHOWN);
  const more = briefing.acts.length - shown.length;
  if (shown.length === 0) return <p className={styles.quiet}>Nothing left to swap tonight.</p>;
  return (
    <section aria-label="Next acts">
      <ol className={styles.acts}>
        {shown.map((act) => {
          const plan = plans.get(act.racerId);
          if (plan === undefined) return null;
          const words = clubActWords(act, plan, planClock(plan, zone));
          return (
            <li key={`${act.racerId} ${act.swap.beforeRun}`} className={styles.act}>
              <span className={styles.time}>{words.time}</span>
              <span className={styles.away}>{countdown(now, act.at)}</span>
              <span className={styles.who}>{names.racer(act.racerId)}</span>
              <span className={styles.what}>
                <Change from={act.swap.from} to={act.swap.to} />
              </span>
            </li>
          );
        })}
      </ol>
      {more > 0 ? <p className={styles.foot}>{`and ${more} more later`}</p> : null}
    </section>
  );
}
