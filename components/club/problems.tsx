import { Notice } from '@/components/ui/notice';
import { Way } from '@/components/ui/way';
import type { Briefing } from '@/lib/club/briefing';
import type { Club, ClubProblem } from '@/lib/night/club';
import type { ClockZone } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { problemSentences, problemTitle } from '@/lib/words/night-problems';
import { planProblemSentence } from '@/lib/words/plan-problems';

type ClubProblemsProps = {
  readonly club: Club;
  readonly briefing: Briefing | null;
  readonly zone: ClockZone;
  readonly units: UnitChoice;
};

/** Why some have no plan, or nobody has. */
export function ClubProblems({ club, briefing, zone, units }: ClubProblemsProps) {
  const voice = { zone, units, runNames: [] };
  return (
    <>
      {club.problem === null ? null : <HoursProblem problem={club.problem} zone={zone} units={units} />}
      {club.broken.map(({ id, name, problems }) => (
        <Notice
          key={id}
          tone="caution"
          title={`${name}: fix the machine first.`}
          act={
            <Way kind="firm" href={`/machines?edit=${encodeURIComponent(id)}`}>
              Fix the machine
            </Way>
          }
        >
          {problemSentences({ code: 'machine', problems }, voice).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </Notice>
      ))}
      {(briefing?.unplanned ?? []).map(({ racer, problem }) => (
        <Notice key={racer.id} tone="caution" title={`${racer.name}: no plan.`}>
          <p>{planProblemSentence(problem, { zone, runNames: racer.runs.map(({ name }) => name) })}</p>
        </Notice>
      ))}
    </>
  );
}

type HoursProblemProps = {
  readonly problem: ClubProblem;
  readonly zone: ClockZone;
  readonly units: UnitChoice;
};

function HoursProblem({ problem, zone, units }: HoursProblemProps) {
  const night =
    problem.code === 'no-hours' ? ({ code: 'plan', problem: { code: 'no-hours' } } as const) : problem;
  return (
    <Notice
      tone="caution"
      title={problemTitle(night)}
      act={
        <Way kind="firm" href="#hours">
          {problem.code === 'no-hours' ? 'Type the hours' : 'Fix the hours'}
        </Way>
      }
    >
      {problemSentences(night, { zone, units, runNames: [] }).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </Notice>
  );
}
