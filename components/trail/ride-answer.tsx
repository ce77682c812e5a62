import { useMemo } from 'react';
import { Notice } from '@/components/ui/notice';
import { Table } from '@/components/ui/table';
import { stateOf } from '@/lib/plan/state-of';
import type { Plan, RunPlan } from '@/lib/plan/types';
import type { Result } from '@/lib/result/result';
import { zoneName } from '@/lib/time/zone';
import { legsOf } from '@/lib/trail/ride';
import { rideCircuits } from '@/lib/trail/ride-circuits';
import { type Consumption, rideFuel } from '@/lib/trail/ride-fuel';
import type { RidePlan, RidePlanProblem, RideRequest } from '@/lib/trail/ride-plan';
import { stopOptions } from '@/lib/trail/ride-stops';
import { formatElevation, formatPercent, formatTemperature } from '@/lib/units/format';
import { driftText } from '@/lib/words/grades';
import { placeNames } from '@/lib/words/place-names';
import { planProblemSentence } from '@/lib/words/plan-problems';
import {
  fuelSentence,
  rideAirProblemSentence,
  rideCall,
  rideClock,
  rideSure,
  stopSentences,
} from '@/lib/words/ride';
import { circuitSentences } from '@/lib/words/ride-circuits';
import { windowText } from '@/lib/words/times';
import type { Voice } from '@/lib/words/voice';
import { warningSentences } from '@/lib/words/warnings';
import styles from './trail.module.css';

type RideAnswerProps = {
  readonly request: RideRequest;
  readonly answer: Result<RidePlan, RidePlanProblem>;
  readonly swapMinutes: number;
  readonly consumption: Consumption | null;
  readonly voice: Voice;
};

/** The call first, then what it costs, the stops, the fuel, and leg by leg what stands behind it. */
export function RideAnswer({ request, answer, swapMinutes, consumption, voice }: RideAnswerProps) {
  if (!answer.ok)
    return (
      <Notice tone="caution" title="No call for this ride.">
        <p>
          {answer.reason.code === 'hours-do-not-cover-ride'
            ? rideAirProblemSentence(answer.reason, voice.zone)
            : planProblemSentence(answer.reason, { zone: voice.zone, runNames: [] })}
        </p>
      </Notice>
    );
  return <Answered request={request} answer={answer.value} {...{ swapMinutes, consumption, voice }} />;
}

type AnsweredProps = Omit<RideAnswerProps, 'answer'> & { readonly answer: RidePlan };

function Answered({ request, answer, swapMinutes, consumption, voice }: AnsweredProps) {
  const { machine, ride } = request;
  const names = placeNames(ride.stops, voice.units);
  const stops = useMemo(() => stopOptions(request, answer, swapMinutes), [request, answer, swapMinutes]);
  const circuits = useMemo(() => rideCircuits(machine, answer), [machine, answer]);
  const fuel = consumption === null ? null : rideFuel(machine, { ride, answer }, consumption);
  return (
    <>
      <div className={styles.call} data-testid="ride-call">
        {rideCall(answer, voice, machine.limits.risk).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      <div className={styles.answer}>
        <p>{rideSure(answer)}</p>
        {circuitSentences(circuits, { machine, voice, clock: rideClock(answer, voice) }).map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        {stopSentences(stops, (place) => names[place] ?? '').map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
        {fuel === null ? null : (
          <p>Fuel: {fuelSentence(fuel, voice.units)} Carry spare fuel; deep snow drinks more.</p>
        )}
        <RideWarnings answer={answer} names={names} voice={voice} />
      </div>
      <p className={styles.source}>
        Leg by leg on the one setting. Mixture: leanest and richest on the leg. Clock times of{' '}
        {zoneName(voice.zone)}.
      </p>
      <LegTable request={request} answer={answer} voice={voice} names={names} />
    </>
  );
}

/** What is to be known beside the call; what the call itself says is not said twice. */
function RideWarnings({ answer, names, voice }: Omit<LegTableProps, 'request'>) {
  const said = new Set(['no-jet-rich-enough', 'no-jet-lean-enough', 'swap-does-not-fit']);
  const warnings = [
    ...new Map(
      warningSentences(withLegNames(answer.plan, names), voice)
        .filter(({ code }) => !said.has(code))
        .map((warning) => [warning.code, warning.message]),
    ).values(),
  ];
  return (
    <ul>
      {warnings.map((message) => (
        <li key={message}>{message}</li>
      ))}
      <li>
        The temperature is taken to fall evenly with height. On a clear calm night the valley is often the
        colder place: type a smaller or a negative fall then.
      </li>
    </ul>
  );
}

/** The plan as it is told: its runs are legs, which go by their places. */
function withLegNames(plan: Plan, names: readonly string[]): Plan {
  const sortedRuns = plan.sortedRuns.map((run, i) => ({ ...run, name: `${names[i]} to ${names[i + 1]}` }));
  return { ...plan, sortedRuns };
}

type LegTableProps = {
  readonly request: RideRequest;
  readonly answer: RidePlan;
  readonly voice: Voice;
  readonly names: readonly string[];
};

function LegTable({ request, answer, voice, names }: LegTableProps) {
  const legs = legsOf(request.ride);
  const clock = rideClock(answer, voice);
  const { limits } = request.machine;
  const leg = ({ run }: RunPlan) => legs[run];
  return (
    <Table
      caption="Leg by leg on the one setting: leanest and richest mixture."
      captionHidden
      columns={[
        {
          head: 'Leg',
          names: true,
          cell: (run) => (
            <>
              {names[run.run]} to {names[run.run + 1]}
              <span className={styles.under}>
                {leg(run) === undefined ? '' : windowText(leg(run)!.from.leave, leg(run)!.to.arrive, clock)}
              </span>
            </>
          ),
        },
        {
          head: 'Elevation',
          figures: true,
          wideOnly: true,
          cell: (run) =>
            `${formatElevation(leg(run)!.from.elevation, voice.units)} to ${formatElevation(leg(run)!.to.elevation, voice.units)}`,
        },
        {
          head: 'Midway',
          figures: true,
          cell: ({ air }) => formatTemperature(air.temperature, voice.units),
        },
        {
          head: 'Mixture',
          cell: ({ leanest, richest }) => (
            <>
              {driftText(leanest, stateOf(leanest, limits))}
              <span className={styles.under}>{driftText(richest, stateOf(richest, limits))}</span>
            </>
          ),
        },
        { head: 'Power', figures: true, cell: ({ relativePower }) => formatPercent(relativePower, 0) },
      ]}
      rows={answer.plan.runs}
      rowKey={({ run }) => String(run)}
    />
  );
}
