import type { Briefing } from '@/lib/club/briefing';
import type { PlannedRacer } from '@/lib/club/racer';
import type { EventJson } from '@/lib/contract/event';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import type { UnitChoice } from '@/lib/units/choice';
import { formatTemperature } from '@/lib/units/format';
import { callSentences } from './call';
import { SWAP_CAUTION_LINE } from './cautions';
import { borrowingSentences, type ClubNames, clubActWords } from './club';
import { fractionCount } from './counts';
import { GRADE_WORD, RUN_STATE_WORD } from './grades';
import { eventLine, madeLine } from './print-facts';
import { planClock, runName } from './runs';
import { actText, settingText } from './settings';
import { clockText } from './times';

/** One row of a sheet that is drawn: words over its whole width, or cells beside each other. */
export type SheetRow =
  | { readonly kind: 'title' | 'lead' | 'strong' | 'text' | 'small'; readonly text: string }
  | { readonly kind: 'head' | 'cells'; readonly cells: readonly string[] };

type SheetOf = {
  readonly briefing: Briefing;
  readonly names: ClubNames;
  readonly event: EventJson;
  /** Sled and class. */
  readonly facts: readonly string[];
  readonly now: Instant;
  readonly units: UnitChoice;
  readonly zone: ClockZone;
};

/** One racer's sheet as rows, in the words of the printed one: the call, what to fit when, and every run. */
export function sheetRows({ racer, plan, standing }: PlannedRacer, of: SheetOf): readonly SheetRow[] {
  const { briefing, names, event, facts, now, units, zone } = of;
  const clock = planClock(plan, zone);
  const acts = briefing.acts.filter(({ racerId }) => racerId === racer.id);
  const loans = briefing.borrowings.filter(({ want }) => want.racerId === racer.id);
  const degrees = (kelvin: Parameters<typeof formatTemperature>[0]): string =>
    formatTemperature(kelvin, units, 0).replace(/\s*°\w$/, '');
  return [
    { kind: 'title', text: names.racer(racer.id) },
    ...(facts.length === 0 ? [] : [{ kind: 'text' as const, text: facts.join(' · ') }]),
    { kind: 'text', text: eventLine(event) },
    { kind: 'lead', text: callSentences(standing, { zone, units, now, ride: event.ride }).join(' ') },
    ...acts.flatMap((act): readonly SheetRow[] => {
      const words = clubActWords(act, plan, clock);
      const window = act.beforeFirst ? [] : [words.window];
      return [
        { kind: 'strong', text: [actText(act.swap.from, act.swap.to), ...window].join(', ') },
        { kind: 'text', text: `${words.where}. ${words.begin}` },
      ];
    }),
    ...loans.map((borrowing) => ({
      kind: 'text' as const,
      text: borrowingSentences(borrowing, plan, names).join(' '),
    })),
    { kind: 'head', cells: ['Run', 'At', `°${units.temperature}`, 'Jets', 'Lean'] },
    ...plan.runs.map((run): SheetRow => {
      const known = run.state !== 'beyond-hours' && run.state !== 'out';
      const lean = `${fractionCount(run.leanCount)}${run.grade === 'good' ? '' : ` ${GRADE_WORD[run.grade].toUpperCase()}`}`;
      return {
        kind: 'cells',
        cells: [
          runName(plan, run.run),
          clockText(plan.sortedRuns[run.run]?.start ?? now, clock),
          run.state === 'beyond-hours' ? '' : degrees(run.air.temperature),
          known ? settingText(run.setting) : RUN_STATE_WORD[run.state],
          run.state === 'planned' ? lean : '',
        ],
      };
    }),
    { kind: 'small', text: SWAP_CAUTION_LINE },
    { kind: 'small', text: madeLine(now, zone).replace('Paper does', 'This picture does') },
  ];
}
