import { expect } from 'vitest';
import { isDangerous } from '@/lib/standing/danger';
import type { Standing } from '@/lib/standing/standing';
import { type CallVoice, callSentences } from '@/lib/words/call';
import { dangerSentences } from '@/lib/words/danger';
import { jobWords } from '@/lib/words/job';
import { questionWords } from '@/lib/words/question';
import { riskSentence } from '@/lib/words/risk';

/** Every sentence that plate and call say of a standing. */
export function saidTexts(standing: Standing, voice: CallVoice): readonly string[] {
  const job = jobWords(standing, voice.zone);
  const question = questionWords(standing, voice.zone);
  return [
    ...callSentences(standing, voice),
    job.lead,
    ...job.lines,
    ...(question === null ? [] : [question.ask, question.meaning]),
    ...dangerSentences(standing.dangers, standing.plan),
    riskSentence(standing),
  ];
}

/** Whatever is said to hold does, and nothing sends anybody out in a run over its limit. */
export function expectNoneSentOutLean(standing: Standing, texts: readonly string[], risk: number): void {
  const { plan } = standing;
  const planned = plan.runs.filter(({ state }) => state === 'planned');
  const bad = planned.filter(isDangerous);
  const all = texts.join(' ');
  if (bad.length > 0) {
    expect(all).toContain('Do not race');
    expect(standing.job.kind).not.toBe('hold');
    for (const { run } of bad)
      expect(standing.dangers.some(({ runs }) => runs.some((each) => each.run === run))).toBe(true);
  }
  if (/\bholds\b/.test(all)) {
    const from = standing.job.kind === 'hold' ? 0 : (plan.swaps.at(-1)?.beforeRun ?? 0);
    expect(bad.filter(({ run }) => run >= from)).toEqual([]);
  }
  for (const run of planned) expect(run.grade === 'lean').toBe(run.chanceOfLean > risk);
}
