import { describe, expect, it } from 'vitest';
import type { NightReview } from '@/lib/after/review';
import { reviewNight } from '@/lib/after/review-night';
import { nightFrom } from '@/lib/night/night';
import { nightToReview } from '@/lib/night/night-to-review';
import { expectOk } from '@/lib/result/result';
import { METRIC_UNITS } from '@/lib/units/choice';
import { type AfterVoice, afterAnswers } from '@/lib/words/after';
import { runsCaption, runWords, tallyRows } from '@/lib/words/after-rows';
import { MORNING_AFTER, type Past, pastNight } from '@/tests/support/past-night';
import { plain, ZONE } from './plan-of';

const ALL = [0, 1, 2, 3, 4, 5, 6, 7];

function told(past: Past): { readonly review: NightReview; readonly voice: AfterVoice } {
  const review = expectOk(reviewNight(nightToReview(expectOk(nightFrom(pastNight(past))), MORNING_AFTER)));
  return { review, voice: { units: METRIC_UNITS, clock: { zone: ZONE, from: review.runs[0]!.start } } };
}

function answers(past: Past): readonly string[] {
  const { review, voice } = told(past);
  return afterAnswers(review, voice).map(({ answer, lines }) => plain([answer, ...lines].join(' ')));
}

describe('a finished night in words', () => {
  it('says that nothing can be known where nothing was noted', () => {
    const [forecast, plan, perfect] = answers({ told: ALL });
    expect(forecast).toContain('Nobody read the air, so the forecast cannot be judged.');
    expect(plan).toContain('Nobody read the air and no run was judged, so the plan cannot be judged.');
    expect(perfect).toBe('Nobody knows more of this night than the forecast did.');
    const { review } = told({ told: ALL });
    expect(tallyRows(review)).toEqual([]);
    expect(runsCaption(review)).toContain('By the forecast alone');
  });

  it('says no more than one reading does', () => {
    expect(answers({ readings: [[2, -3]] })[0]).toBe(
      'At 20:30 the hours you typed were 3.0 °C too warm. One reading speaks for its own hour, and not for the night.',
    );
  });

  it('says a bias with its range, and a spread where readings allow one', () => {
    expect(
      answers({
        readings: [
          [0, -2],
          [2, -3],
          [4, -4],
        ],
      })[0],
    ).toBe(
      'The hours you typed were 3.0 °C too warm on average, by 3 readings from 19:00 to 22:00. From 2.0 °C to 4.0 °C too warm; too few readings to tell a spread.',
    );
    expect(
      answers({
        readings: [
          [0, -2],
          [2, -3],
          [4, -4],
          [6, -3],
        ],
      })[0],
    ).toContain('with a spread of ±0.8 °C.');
    expect(
      answers({
        readings: [
          [0, 0.4],
          [2, -0.3],
        ],
      })[0],
    ).toContain(
      'From 0.4 °C too cold to 0.3 °C too warm; too few readings to tell a spread. That is no more than a thermometer itself may be off.',
    );
  });

  it('says what the plugs said beside what the planner says', () => {
    const [, plan] = answers({
      readings: [[0, 0]],
      told: ALL,
      verdicts: [
        [3, 'rich'],
        [6, 'lean'],
      ],
    });
    expect(plan).toContain('The log says lean in Round 7, rich in Round 4.');
    expect(plan).toContain('Judged by 1 reading and 2 verdicts.');
  });

  it('tells a run nobody told as a guess', () => {
    const { review, voice } = told({ readings: [[0, 0]], told: [0] });
    expect(runWords(review.runs[0]!, voice)).toMatchObject({ made: '410 400 410', stood: 'good' });
    expect(runWords(review.runs[7]!, voice)).toMatchObject({ made: 'not told', verdict: null });
    expect(runWords(review.runs[7]!, voice).stood).toMatch(/^if on 410 400 410: /);
    expect(tallyRows(review)[0]?.how).toBe('As made (7 runs not told, counted on a guess)');
  });
});
