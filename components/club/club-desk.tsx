'use client';

import { useMemo, useState } from 'react';
import { Cautions } from '@/components/night/cautions';
import { PostNight } from '@/components/share/post-night';
import { ChosenElsewhere } from '@/components/store/chosen-elsewhere';
import { useClockZone } from '@/components/store/use-clock-zone';
import { Notice } from '@/components/ui/notice';
import { Select } from '@/components/ui/select';
import { Way } from '@/components/ui/way';
import { WeatherSection } from '@/components/weather/weather-section';
import type { Briefing } from '@/lib/club/briefing';
import { nightsOf } from '@/lib/night/club';
import type { ClockZone } from '@/lib/time/zone';
import { clubCall } from '@/lib/words/club';
import { briefingOf, clubGroups } from '@/lib/words/club-groups';
import { clubNames } from '@/lib/words/club-names';
import { clubReadingSentence } from '@/lib/words/reading-worth';
import { ActList } from './act-list';
import { BorrowingSection } from './borrowing-section';
import { ChooseEvent } from './choose-event';
import { ClubChanges } from './club-changes';
import { ClubForms } from './club-forms';
import { ClubHead } from './club-head';
import styles from './club-page.module.css';
import { ClubReadings } from './club-readings';
import { ClubSetup } from './club-setup';
import { ClubWarnings } from './club-warnings';
import { MatrixSection } from './matrix/matrix-section';
import { ClubProblems } from './problems';
import { RosterSection } from './roster/roster-section';
import { SendSection } from './send/send-section';
import { useRosterActs } from './use-roster-acts';
import { useStages } from './use-stages';
import type { ClubViewProps } from './view-props';

type ClubDeskProps = ClubViewProps & {
  readonly view: string;
  /** False while the event that was chosen last is still being read, and all this is of the one before. */
  readonly isChosen: boolean;
};

/** The whole of the club's night on one page. */
export function ClubDesk(props: ClubDeskProps) {
  const { records, club, isChosen, briefing, preferences, view } = props;
  const acts = useRosterActs(records);
  const names = useMemo(() => clubNames(records), [records]);
  const nights = useMemo(() => nightsOf(records), [records]);
  const [filter, setFilter] = useState('');
  const groups = useMemo(() => clubGroups(records, names), [records, names]);
  const shown = groups.find(({ value }) => value === filter) ?? groups[0]!;
  const { event } = records.event.value;
  const zone = useClockZone(event.timezone);
  const canPlan = club.racers.length > 0 && club.night !== null;
  const ready = briefing !== null && canPlan;
  const isComing = briefing === null && canPlan;
  return (
    <main className={styles.page}>
      <div className={styles.head}>
        <ChosenElsewhere withMachine={false} />
        <ClubHead {...props} />
        {ready ? <Call briefing={briefing} names={names} zone={zone} /> : null}
        {ready ? <ReadingLine briefing={briefing} zone={zone} /> : null}
        {isComing ? null : (
          <div className={styles.ways}>
            <ChooseEvent event={records.event} />
            {ready ? (
              <>
                <Select label="Show" value={shown.value} options={groups} onChange={setFilter} />
                <Way href="#print">Print</Way>
                <Way href="#wall">Trailer wall</Way>
              </>
            ) : null}
          </div>
        )}
      </div>
      <ClubProblems club={club} zone={zone} units={preferences} briefing={briefing} />
      {club.racers.length + club.broken.length === 0 ? <NobodyYet /> : null}
      {ready ? (
        <Planned
          {...props}
          briefing={shown.value === '' ? briefing : briefingOf(briefing, shown.ids)}
          whole={briefing}
          names={names}
          acts={acts}
        />
      ) : null}
      {isComing ? <p className={styles.coming}>Planning…</p> : null}
      <div className={styles.desk}>
        <RosterSection records={records} club={club} acts={acts} />
        <ClubReadings records={records} planned={briefing?.planned[0]} now={props.now} units={preferences} />
        <WeatherSection event={records.event} now={props.now} forecast={props.forecast} />
        <ClubSetup records={records} units={preferences} />
        <ClubForms {...{ records, view, acts, isChosen }} units={preferences} />
        {ready ? (
          <SendSection {...{ records, club, briefing, names, zone, now: props.now, units: preferences }} />
        ) : null}
        {ready ? <PostNight nights={nights} /> : null}
      </div>
      {ready ? <ClubCautions /> : null}
    </main>
  );
}

/** In a place of their own, which paper puts behind the jobs. */
function ClubCautions() {
  return (
    <div className={styles.cautions}>
      <Cautions />
    </div>
  );
}

function NobodyYet() {
  return (
    <Notice
      title="Nobody is on the roster yet."
      act={
        <Way kind="firm" href="#racers">
          Add racers
        </Way>
      }
    >
      <p>Pick machines of this browser, paste a table, or open the links your racers sent you.</p>
    </Notice>
  );
}

type CallProps = {
  readonly briefing: Briefing;
  readonly names: ReturnType<typeof clubNames>;
  readonly zone: ClockZone;
};

function Call({ briefing, names, zone }: CallProps) {
  const { loud, calm } = clubCall(briefing, names, zone);
  return (
    <div className={styles.call}>
      <div aria-live="polite">
        {loud.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {/* Its time goes with the clock; to be read, not to be spoken every minute. */}
      <p>{calm}</p>
    </div>
  );
}

/** Readings count for everybody: one quiet line, and only while one would tell enough. */
function ReadingLine({ briefing, zone }: Omit<CallProps, 'names'>) {
  const sentence = clubReadingSentence(briefing, zone);
  if (sentence === null) return null;
  return (
    <p className={styles.reading}>
      {sentence} <Way href="#reading">Enter what it says</Way>
    </p>
  );
}

type PlannedProps = ClubViewProps & {
  readonly briefing: Briefing;
  /** Unfiltered: what the club accepts is all of it. */
  readonly whole: Briefing;
  readonly names: ReturnType<typeof clubNames>;
  readonly acts: ReturnType<typeof useRosterActs>;
};

function Planned({ records, briefing, whole, names, acts, preferences }: PlannedProps) {
  const zone = useClockZone(records.event.value.event.timezone);
  const stage = useStages(3);
  const { temperature, pressure, elevation } = preferences;
  const voice = useMemo(
    () => ({ zone, units: { temperature, pressure, elevation } }),
    [zone, temperature, pressure, elevation],
  );
  return (
    <>
      <ClubChanges briefing={briefing} event={records.event.value} names={names} voice={voice} />
      <ClubWarnings briefing={briefing} names={names} voice={voice} />
      <ActList
        briefing={briefing}
        names={names}
        zone={zone}
        acts={acts}
        onAccept={() => void acts.accept(whole.planned)}
      />
      {stage < 2 ? null : (
        <div className={styles.behind}>
          <MatrixSection briefing={briefing} names={names} zone={zone} />
        </div>
      )}
      {stage < 3 ? (
        <div className={styles.coming} />
      ) : (
        <div className={styles.behind}>
          <BorrowingSection briefing={briefing} names={names} />
        </div>
      )}
    </>
  );
}
