'use client';

import { memo, useMemo } from 'react';
import type { RosterActs } from '@/components/club/use-roster-acts';
import { useClockZone } from '@/components/store/use-clock-zone';
import { Button } from '@/components/ui/button';
import { Disclosure } from '@/components/ui/disclosure';
import { saveFile } from '@/components/ui/save-file';
import { Section } from '@/components/ui/section';
import { Select } from '@/components/ui/select';
import { Way } from '@/components/ui/way';
import { boxText } from '@/lib/carb/box-text';
import { instantFromJson } from '@/lib/contract/event-from-json';
import type { Club, ClubRecords } from '@/lib/night/club';
import { machineWithBaseline } from '@/lib/store/machine-in-force';
import { classOf, eventOfRacer, racerName } from '@/lib/store/racer-event';
import type { BoxRecord, ClubClass, EventRecord, MachineRecord, Stored } from '@/lib/store/records';
import type { ClockZone } from '@/lib/time/zone';
import type { ClubNames } from '@/lib/words/club';
import { clubNames } from '@/lib/words/club-names';
import { counted, listing } from '@/lib/words/listing';
import { jetsText } from '@/lib/words/settings';
import { clockText } from '@/lib/words/times';
import styles from './roster.module.css';

type RosterProps = {
  readonly records: ClubRecords;
  readonly club: Club;
  readonly acts: RosterActs;
};

/** A longer roster is folded away: the briefing is what one comes for. */
const MOST_OPEN = 12;

/** Who takes part, and when each runs. */
export function RosterSection({ records, club, acts }: RosterProps) {
  const { event, machines } = records;
  const classes = event.value.club?.classes ?? [];
  const names = useMemo(() => clubNames(records), [records]);
  const boxes = boxesOf(records);
  const list = (
    <ul className={styles.list}>
      {machines.map((machine) => (
        <RosterRow
          key={machine.id}
          machine={machine}
          name={names.racer(machine.id)}
          box={machine.value.boxId === null ? null : names.box(machine.value.boxId)}
          event={event.value}
          classes={classes}
          acts={acts}
        />
      ))}
    </ul>
  );
  return (
    <Section title="Roster" aside={counted(machines.length, 'racer')} id="roster">
      {machines.length > MOST_OPEN ? (
        <Disclosure summary={`All ${machines.length} racers`}>{list}</Disclosure>
      ) : (
        list
      )}
      <div className={styles.ways}>
        <Way kind="firm" href="#racers">
          Add racers
        </Way>
        <Way kind="firm" href="#class-new">
          Add a class
        </Way>
        {machines.length < 2 ? null : (
          <Way kind="firm" href="#box-new">
            Share a box
          </Way>
        )}
        {machines.length === 0 ? null : (
          <Button onClick={() => saveRoster(records)}>Save the roster (.csv)</Button>
        )}
      </div>
      {boxes.map((box) => (
        <BoxRow key={box.id} box={box} title={names.box(box.id)} names={names} records={records} />
      ))}
      {classes.map((each) => (
        <ClassRow key={each.id} each={each} event={event.value} club={club} acts={acts} />
      ))}
    </Section>
  );
}

type RosterRowProps = {
  readonly machine: Stored<MachineRecord>;
  readonly name: string;
  /** The box it shares; null where it has its own. */
  readonly box: string | null;
  readonly event: EventRecord;
  readonly classes: readonly ClubClass[];
  readonly acts: RosterActs;
};

const EVERYBODY = '';

const RosterRow = memo(function RosterRow({ machine, name, box, event, classes, acts }: RosterRowProps) {
  const { id, value } = machine;
  const zone = useClockZone(event.event.timezone);
  const own = racerName(event, id, value);
  const inForce = machineWithBaseline(value);
  return (
    <li className={styles.racer}>
      <div className={styles.who}>
        <b>{name}</b>
        <span className={styles.facts}>
          {[
            value.machine.name === own ? null : value.machine.name,
            `baseline ${jetsText(inForce.carburettors.map(({ main }) => main))}`,
            box,
            runsText(event, id, zone),
          ]
            .filter((part) => part !== null)
            .join(', ')}
        </span>
      </div>
      <div className={styles.acts}>
        {classes.length === 0 ? null : (
          <div className={styles.runsWith}>
            <Select
              label="Runs with"
              aria-label={`${name} runs with`}
              value={classOf(event, id)?.id ?? EVERYBODY}
              options={[
                { value: EVERYBODY, label: 'everybody' },
                ...classes.map((each) => ({ value: each.id, label: each.name })),
              ]}
              onChange={(classId) =>
                void acts.moveTo(id, name, classes.find((each) => each.id === classId) ?? null)
              }
            />
          </div>
        )}
        <Way href={`#racer-${id}`} aria-label={`Bib, name: ${name}`}>
          Bib, name
        </Way>
        <Way href={`/machines?edit=${encodeURIComponent(id)}`} aria-label={`Machine of ${name}`}>
          Machine
        </Way>
        <Button kind="quiet" aria-label={`Remove: ${name}`} onClick={() => void acts.leave(id, name)}>
          Remove
        </Button>
      </div>
    </li>
  );
});

/** "8 runs from 19:00". */
function runsText(event: EventRecord, machineId: string, zone: ClockZone): string {
  const { runs } = eventOfRacer(event, machineId);
  const starts = runs.map(({ start }) => instantFromJson(start)).sort((a, b) => a - b);
  const first = starts[0];
  if (first === undefined) return 'no runs';
  return `${counted(runs.length, 'run')} from ${clockText(first, { zone, from: first })}`;
}

/** What writes tables comes when a file is wanted. */
function saveRoster(records: ClubRecords): void {
  void import('@/lib/share/roster-csv').then(({ rosterCsv }) =>
    saveFile({ text: rosterCsv(records), type: 'text/csv', name: 'roster.csv' }),
  );
}

/** The boxes that racers of this event share. */
function boxesOf({ boxes, machines }: ClubRecords): readonly Stored<BoxRecord>[] {
  return boxes.filter(({ id }) => machines.some(({ value }) => value.boxId === id));
}

type BoxRowProps = {
  readonly box: Stored<BoxRecord>;
  readonly title: string;
  readonly names: ClubNames;
  readonly records: ClubRecords;
};

function BoxRow({ box, title, names, records }: BoxRowProps) {
  const sharers = records.machines.filter(({ value }) => value.boxId === box.id);
  return (
    <div className={styles.racer}>
      <div className={styles.who}>
        <b>{title}</b>
        <span className={styles.facts}>
          {`${boxText(box.value.entries)}; ${listing(sharers.map(({ id }) => names.racer(id)))}`}
        </span>
      </div>
      <div className={styles.acts}>
        <Way href={`#box-${box.id}`} aria-label={`Change: ${title}`}>
          Change
        </Way>
      </div>
    </div>
  );
}

type ClassRowProps = {
  readonly each: ClubClass;
  readonly event: EventRecord;
  readonly club: Club;
  readonly acts: RosterActs;
};

function ClassRow({ each, event, club, acts }: ClassRowProps) {
  const zone = useClockZone(event.event.timezone);
  const members = club.racers.filter(({ id }) => event.club?.racers[id]?.classId === each.id);
  const clock = (time: string) => clockText(instantFromJson(time), { zone });
  return (
    <div className={styles.racer}>
      <div className={styles.who}>
        <b>Class {each.name}</b>
        <span className={styles.facts}>
          {each.runs.length === 0
            ? 'no runs yet'
            : `runs at ${each.runs.map(({ start }) => clock(start)).join(', ')}`}
          {members.length === 0 ? '; nobody in it' : `; ${listing(members.map(({ name }) => name))}`}
        </span>
      </div>
      <div className={styles.acts}>
        <Way href={`#class-${each.id}`} aria-label={`Change class ${each.name}`}>
          Change
        </Way>
        <Button
          kind="quiet"
          aria-label={`Remove class ${each.name}`}
          onClick={() => void acts.dropClass(each)}
        >
          Remove
        </Button>
      </div>
    </div>
  );
}
