'use client';

import { Fragment, useState } from 'react';
import type { Acts } from '@/components/night/use-acts';
import { Button } from '@/components/ui/button';
import { Choice } from '@/components/ui/choice';
import { Dialog } from '@/components/ui/dialog';
import { Disclosure } from '@/components/ui/disclosure';
import { Select } from '@/components/ui/select';
import type { Plan } from '@/lib/plan/types';
import type { Standing } from '@/lib/standing/standing';
import { addMinutes, type Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { delayWarning } from '@/lib/words/delay';
import { planClock, runName } from '@/lib/words/runs';
import { settingText } from '@/lib/words/settings';
import { clockText } from '@/lib/words/times';
import { together } from '@/lib/words/together';
import styles from './plate.module.css';

/** The delays a race knows, in minutes; one tap each. */
const QUICK = [20, 30, 50] as const;

const MINUTES = ['-30', '-15', '5', '10', '15', '45', '60', '90'] as const;
type Minutes = (typeof MINUTES)[number];
const OPTIONS = MINUTES.map((value) => ({
  value,
  label: value.startsWith('-') ? `${value.slice(1)} earlier` : `${value} later`,
}));

type ScheduleDialogProps = {
  readonly standing: Standing;
  readonly zone: ClockZone;
  readonly acts: Acts;
  readonly onClose: () => void;
};

/** For when the night does not keep to its times: moves what is to come, adds a run, or tells of one that came early. */
export function ScheduleDialog({ standing, zone, acts, onClose }: ScheduleDialogProps) {
  const { plan, now, inNow } = standing;
  const runs = runsLeft(plan, now);
  const [run, setRun] = useState(() => firstLeft(plan, now) ?? runs[0]);
  const start = run === undefined ? undefined : plan.sortedRuns[run]?.start;
  const done = (act: () => void) => {
    act();
    onClose();
  };
  if (run === undefined || start === undefined) return null;
  const clock = planClock(plan, zone);
  const name = runName(plan, run);
  return (
    <Dialog title="Running late?" open onClose={onClose}>
      <Select
        label="The next run"
        value={String(run)}
        options={runs.map((each) => ({
          value: String(each),
          label: `${runName(plan, each)}, ${clockText(plan.sortedRuns[each]?.start ?? now, clock)}`,
        }))}
        onChange={(value) => setRun(Number(value))}
      />
      <div className={styles.acts}>
        {QUICK.map((minutes) => (
          <Fragment key={minutes}>
            <Button size="large" wide onClick={() => done(() => acts.moveRuns(run, minutes))}>
              {`All ${minutes} min later: ${name} at ${clockText(addMinutes(start, minutes), clock)}`}
            </Button>
            <OffTheHours {...{ plan, zone, run, minutes }} />
          </Fragment>
        ))}
        <Button size="large" wide onClick={() => done(() => acts.startNow(run))}>
          {name} starts now
        </Button>
        <Button size="large" wide onClick={() => done(acts.addRun)}>
          One more run after {runName(plan, plan.sortedRuns.length - 1)}
        </Button>
        <Button size="large" wide onClick={() => done(() => acts.runMade(run, inNow.setting))}>
          {together(`${name} was run on ${settingText(inNow.setting)}`)}
        </Button>
      </div>
      <OtherDelay
        run={run}
        start={start}
        {...{ plan, zone }}
        onMove={(n) => done(() => acts.moveRuns(run, n))}
      />
    </Dialog>
  );
}

type OtherDelayProps = {
  readonly plan: Plan;
  readonly zone: ClockZone;
  readonly run: number;
  readonly start: Instant;
  readonly onMove: (minutes: number) => void;
};

/** Any other delay, or a start that came forward. */
function OtherDelay({ plan, zone, run, start, onMove }: OtherDelayProps) {
  const [minutes, setMinutes] = useState<Minutes>('15');
  const moved = clockText(addMinutes(start, Number(minutes)), planClock(plan, zone));
  return (
    <Disclosure summary="Another time">
      <Choice
        label="Move it and all after it, minutes"
        value={minutes}
        options={OPTIONS}
        onChange={setMinutes}
      />
      <OffTheHours {...{ plan, zone, run, minutes: Number(minutes) }} />
      <Button onClick={() => onMove(Number(minutes))}>
        Move {runName(plan, run)} to {moved}
      </Button>
    </Disclosure>
  );
}

type OffTheHoursProps = Pick<OtherDelayProps, 'plan' | 'zone' | 'run'> & { readonly minutes: number };

/** Said before a delay moves runs out of the hours, so that nobody finds out after it. */
function OffTheHours({ plan, zone, run, minutes }: OffTheHoursProps) {
  const warning = delayWarning(plan, { from: run, minutes }, { zone });
  return warning === null ? null : <p>{warning}</p>;
}

/** Runs that are not over by the clock, and the one that should be: it may be late. */
function runsLeft(plan: Plan, now: Instant): readonly number[] {
  const first = firstLeft(plan, now) ?? plan.sortedRuns.length;
  return plan.sortedRuns.map((_, run) => run).slice(Math.max(0, first - 1));
}

function firstLeft(plan: Plan, now: Instant): number | null {
  const first = plan.sortedRuns.findIndex(({ end }, run) => end > now && plan.runs[run]?.state !== 'made');
  return first === -1 ? null : first;
}
