import { it } from 'vitest';
import { nightToReview } from '@/components/after/night-to-review';
import { nightFrom } from '@/components/night/night';
import { reviewNight } from '@/lib/after/review-night';
import { expectOk } from '@/lib/result/result';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { afterAnswers, runWords, tallyRows } from '@/lib/words/after';
import { MORNING_AFTER, type Past, pastNight } from '@/tests/support/past-night';

const ALL = [0, 1, 2, 3, 4, 5, 6, 7];
it.each([
  [{}],
  [{ readings: [[2, -3]], told: ALL }],
  [{ readings: [[0, -2], [2, -3], [4, -3.5], [6, -3], [7, -2.5]], told: [0, 1, 2, 3, 4, 5] , verdicts: [[0,'right'],[3,'rich']]}],
  [{ readings: [[0, -2], [4, -3.5], [7, -3]], told: ALL, kept: { mains: [410, 400, 410], trim: null }, verdicts: [[7, 'lean']] }],
  [{ readings: [[0, 4], [4, 4]], told: ALL }],
  [{ readings: [[0, 0.2], [4, -0.3]], accepted: false }],
] as [Past][])('%j', (past) => {
  const night = expectOk(nightFrom(pastNight(past)));
  const review = expectOk(reviewNight(nightToReview(night, MORNING_AFTER)));
  const voice = { units: US_UNITS, clock: { zone: night.zone, from: review.runs[0]!.start } };
  process.stdout.write(`${JSON.stringify(past)}\n`);
  for (const a of afterAnswers(review, voice)) process.stdout.write(`  ${a.question}\n    ${a.answer}\n${a.lines.map((l) => `      ${l}\n`).join('')}`);
  for (const r of tallyRows(review)) process.stdout.write(`  ${Object.values(r).join(' | ')}\n`);
  for (const r of review.runs) process.stdout.write(`  ${r.name} ${Object.values(runWords(r, voice)).join(' | ')}\n`);
});
