'use client';

import type { NightState } from '@/components/night/use-night';
import type { Write } from '@/components/store/use-write';
import { Disclosure } from '@/components/ui/disclosure';
import { Section } from '@/components/ui/section';
import { type RunToLog, runsToLog } from '@/lib/night/to-log';
import { hasBegun } from '@/lib/plan/has-begun';
import type { LogRecord, Stored } from '@/lib/store/records';
import type { UnitChoice } from '@/lib/units/choice';
import { NotedRun } from './noted-run';
import { RunAsked } from './run-asked';
import { RunTaps } from './run-taps';
import { TonightNow } from './tonight-now';
import { type LogActs, useLogActs } from './use-log-acts';

type RunsToLogProps = {
  readonly state: NightState;
  readonly log: readonly Stored<LogRecord>[];
  readonly units: UnitChoice;
  readonly write: Write;
};

/** After a run: what was in is asked where nobody said, its air is known from the hour, a tap says how it was. */
export function RunsToLog({ state, log, units, write }: RunsToLogProps) {
  const waiting =
    state.status === 'ready' ? runsToLog({ night: state.night, plan: state.standing.plan, log }) : [];
  const acts = useLogActs({ write, log, waiting });
  if (state.status !== 'ready') return null;
  const { night, standing } = state;
  const [last, ...earlier] = acts.shown;
  const { event, machine } = night.records;
  const title = `${event.value.event.name}: ${machine.value.machine.name}`;
  const row = (run: RunToLog, large: boolean) => (
    <RunRow key={run.entry.at} {...{ run, units, acts, large }} machine={night.machine} />
  );
  return (
    <Section title={last === undefined ? 'After a run' : 'How was the last run?'} aside={title}>
      {last === undefined ? (
        <p>
          {standing.plan.runs.some(hasBegun)
            ? 'Every run of this night that is over is in the log. The next one shows up here when it is made.'
            : 'No run of this night is over yet. The first one shows up here when it is made.'}
        </p>
      ) : (
        row(last, true)
      )}
      {acts.noted === null ? null : <NotedRun noted={acts.noted} onTakeBack={acts.takeBack} />}
      <TonightNow night={night} standing={standing} />
      {earlier.length === 0 ? null : (
        <Disclosure summary={`Earlier runs not in the log (${earlier.length})`}>
          {earlier.map((run) => row(run, false))}
        </Disclosure>
      )}
    </Section>
  );
}

type RunRowProps = Pick<Parameters<typeof RunTaps>[0], 'run' | 'units' | 'large'> & {
  readonly acts: LogActs;
  readonly machine: Parameters<typeof RunAsked>[0]['machine'];
};

function RunRow({ run, units, acts, large, machine }: RunRowProps) {
  const { held, tell, say } = acts;
  return run.choices === null ? (
    <RunTaps {...{ run, units, held, large }} onSay={(entry) => say(run, entry)} />
  ) : (
    <RunAsked {...{ run, machine, held, large }} choices={run.choices} onTell={(on) => tell(run, on)} />
  );
}
