import type { NightReview, RunReview, Stood, Tally } from '@/lib/after/review';
import { formatPercent, formatTemperature, formatTemperatureStep } from '@/lib/units/format';
import { ratio } from '@/lib/units/quantity';
import { type AfterVoice, stintsText } from './after';
import { shortCount } from './counts';
import { GRADE_WORD } from './grades';
import { counted } from './listing';
import { verdictText } from './log';
import { settingText } from './settings';
import { windowText } from './times';

/** The rows of the three nights beside each other. */
export type TallyWords = {
  readonly how: string;
  readonly jets: string;
  readonly swaps: string;
  readonly lean: string;
  readonly rich: string;
  readonly lost: string;
};

export function tallyRows({ compared, runs }: NightReview): readonly TallyWords[] {
  if (compared === null) return [];
  const { made, planned, perfect, untold } = compared;
  const row = (how: string, tally: Tally | null): readonly TallyWords[] =>
    tally === null
      ? []
      : [
          {
            how,
            jets: stintsText(tally, runs),
            swaps: String(tally.swaps),
            lean: String(tally.lean.length),
            rich: String(tally.rich.length),
            lost: formatPercent(tally.loss, 1),
          },
        ];
  return [
    ...row(
      untold === 0 ? 'As made' : `As made (${counted(untold, 'run')} not told, counted on a guess)`,
      made,
    ),
    ...row('As planned', planned),
    ...row('Perfect knowledge', perfect),
  ];
}

/** One run in the words of its row. */
export type RunWords = {
  readonly when: string;
  /** "9.3 °F ±1.2 °F", or that the hours do not reach it. */
  readonly air: string;
  /** '' where it was not kept. */
  readonly plannedFor: string;
  readonly planned: string;
  /** "420", or "not told" with what is counted on. */
  readonly made: string;
  /** "right", "lean, risk 12 in 64". */
  readonly stood: string;
  readonly drift: string;
  /** null: not in the log. */
  readonly verdict: string | null;
};

export function runWords(run: RunReview, { units, clock }: AfterVoice): RunWords {
  const { start, end, air, planned, made, stood, log } = run;
  return {
    when: windowText(start, end, clock),
    air:
      air === null
        ? 'no hours'
        : `${formatTemperature(air.temperature, units)} ±${formatTemperatureStep(air.sd, units, 1)}`,
    plannedFor:
      planned?.temperature === undefined || planned.temperature === null
        ? ''
        : `for ${formatTemperature(planned.temperature, units)}`,
    planned: planned === null ? 'no plan accepted' : `planned ${settingText(planned.setting)}`,
    made: made === null ? 'out' : made.told ? settingText(made.setting) : 'not told',
    stood:
      stood === null
        ? ''
        : `${made?.told === false ? `if on ${settingText(made.setting)}: ` : ''}${stoodText(stood)}`,
    drift: stood === null ? '' : driftText(stood),
    verdict: log === null ? null : verdictText(log),
  };
}

function stoodText({ grade, leanCount }: Stood): string {
  return grade === 'lean' ? `lean, risk ${shortCount(leanCount)}` : GRADE_WORD[grade];
}

/** Where it stood at its leanest, which is what an engine minds, or at its richest where that is the trouble. */
function driftText({ grade, leanest, richest }: Stood): string {
  const drift = grade === 'rich' || grade === 'drowned' ? richest : leanest;
  const percent = formatPercent(ratio(Math.abs(drift)), 1);
  if (percent === formatPercent(ratio(0), 1)) return 'as the baseline';
  return `${percent} ${drift < 0 ? 'leaner' : 'richer'}`;
}

/** What the table of runs is judged by. */
export function runsCaption({ compared }: NightReview): string {
  return compared === null
    ? 'By the forecast alone: nobody read the air or judged a run, so how a run stood is not known.'
    : 'The air is that of the hours and every reading; ± is what is left unsure. How a run stood is against the baseline, at its leanest moment.';
}
