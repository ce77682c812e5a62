'use client';

import { useState } from 'react';
import type { Acts } from '@/components/night/use-acts';
import { Button } from '@/components/ui/button';
import { Choice } from '@/components/ui/choice';
import { Dialog } from '@/components/ui/dialog';
import { Select } from '@/components/ui/select';
import type { Setting } from '@/lib/carb/machine';
import type { Plan } from '@/lib/plan/types';
import { addMinutes, type Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { planClock, runName } from '@/lib/words/runs';
import { clockText } from '@/lib/words/times';

const MINUTES = ['-30', '-15', '10', '15', '20', '30', '45', '60'] as const;
type Minutes = (typeof MINUTES)[number];
const OPTIONS = MINUTES.map((value) => ({
  value,
  label: value.startsWith('-') ? `${value.slice(1)} earlier` : `${value} later`,
}));

type ScheduleDialogProps = {
  readonly plan: Plan;
  readonly fitted: Setting;
  readonly now: Instant;
  readonly zone: ClockZone;
  readonly acts: Acts;
  readonly onClose: () => void;
};

/** For when the night does not keep to its times: moves what is to come, or tells of a run that came early. */
export function ScheduleDialog({ plan, fitted, now, zone, acts, onClose }: ScheduleDialogProps) {
  const runs = runsLeft(plan, now);
  const [run, setRun] = useState(() => firstLeft(plan, now) ?? runs[0]);
  const [minutes, setMinutes] = useState<Minutes>('15');
  const start = run === undefined ? undefined : plan.sortedRuns[run]?.start;
  if (run === undefined || start === undefined)
    return (
      <Dialog title="Off schedule" open onClose={onClose}>
        <p>All runs are over by the clock. Change their times under Event.</p>
      </Dialog>
    );
  const clock = planClock(plan, zone);
  const moved = clockText(addMinutes(start, Number(minutes)), clock);
  function done(act: () => void) {
    act();
    onClose();
  }
  return (
    <Dialog
      title="Off schedule"
      open
      onClose={onClose}
      footer={
        <>
          <Button kind="primary" onClick={() => done(() => acts.moveRuns(run, Number(minutes)))}>
            Move {runName(plan, run)} to {moved}
          </Button>
          <Button onClick={() => done(() => acts.runMade(run, fitted))}>
            {runName(plan, run)} is made already
          </Button>
        </>
      }
    >
      <Select
        label="The next run"
        value={String(run)}
        options={runs.map((each) => ({
          value: String(each),
          label: `${runName(plan, each)}, ${clockText(plan.sortedRuns[each]?.start ?? now, clock)}`,
        }))}
        onChange={(value) => setRun(Number(value))}
      />
      <Choice
        label="Move it and all after it, minutes"
        value={minutes}
        options={OPTIONS}
        onChange={setMinutes}
      />
    </Dialog>
  );
}

/** Runs that are not over by the clock, and the one that should be: it may be late. */
function runsLeft(plan: Plan, now: Instant): readonly number[] {
  const first = firstLeft(plan, now) ?? plan.sortedRuns.length;
  return plan.sortedRuns.map((_, run) => run).slice(Math.max(0, first - 1));
}

function firstLeft(plan: Plan, now: Instant): number | null {
  const first = plan.sortedRuns.findIndex(({ end }) => end > now);
  return first === -1 ? null : first;
}
