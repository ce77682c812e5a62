import type { Setting } from '@/lib/carb/machine';
import type { Standing } from '@/lib/standing/standing';
import type { Instant } from '@/lib/time/instant';
import type { SettingJson } from './event';
import type { PlanAnswer } from './plan-answer';

/** What a standing does not say itself. */
export type StandingTexts = {
  readonly question: string;
  /** One for each danger. */
  readonly dangers: readonly string[];
  readonly risk: string;
  readonly reading: string;
};

export function settingJson({ mains, trim }: Setting): SettingJson {
  return { mains: [...mains], trim };
}

/** A standing as JSON. */
export function standingAnswer(
  { plan, inNow, mixture, question, dangers, job, reading }: Standing,
  texts: StandingTexts,
  write: (at: Instant) => string,
): PlanAnswer['standing'] {
  return {
    inNow: { setting: settingJson(inNow.setting), known: inNow.known },
    state: mixture === null ? null : mixture.state,
    driftPercent: mixture === null ? null : mixture.drift * 100,
    question:
      question === null
        ? null
        : {
            from: settingJson(question.from),
            to: settingJson(question.to),
            beforeRun: question.beforeRun,
            since: write(question.since),
            words: texts.question,
          },
    job: { kind: job.kind, swap: job.kind === 'swap' ? plan.swaps.indexOf(job.swap) : null },
    dangers: dangers.map(({ grade, why, runs, sizes }, i) => ({
      grade,
      why,
      runs: runs.map(({ run }) => run),
      borrow: sizes === null ? null : [...sizes],
      words: texts.dangers[i] ?? '',
    })),
    risk: texts.risk,
    reading:
      reading === null
        ? null
        : {
            run: reading.run,
            at: write(reading.at),
            temperatureSdBeforeC: reading.sdBefore,
            temperatureSdAfterC: reading.sdAfter,
            words: texts.reading,
          },
  };
}
