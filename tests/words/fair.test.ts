import { describe, expect, it } from 'vitest';
import { DEFAULT_FAIR_OPTIONS, fairComparison } from '@/lib/power/fair-comparison';
import { STANDARD_IDS, STANDARDS } from '@/lib/power/standards';
import { expectOk } from '@/lib/result/result';
import { METRIC_UNITS } from '@/lib/units/choice';
import {
  fairCaveatSentence,
  fairProblemSentence,
  standardText,
  verdictSentences,
  verdictTitle,
} from '@/lib/words/fair';
import { airOf, relative, standard, station } from '../support/air';
import { dynoPulls, timedRuns } from '../support/pulls';

const evening = airOf(20, station(990), relative(0.4));

describe('a fair comparison in words', () => {
  it('prints name and edition of every standard', () => {
    for (const id of STANDARD_IDS) expect(standardText(STANDARDS[id])).toMatch(/\(.*(19|20)\d\d|withdrawn/);
  });

  it('splits the change into air, mixture and what is left for the named part', () => {
    const fair = expectOk(
      fairComparison(dynoPulls([150.2, 149.8, 150], evening), dynoPulls([154.1, 153.8, 154.2], evening)),
    );
    expect(verdictTitle(fair.verdict)).toBe('The part makes power.');
    const [said] = verdictSentences(fair, { part: 'pipe', ratedPower: null });
    expect(said).toContain('what is left for “pipe” is +4.0\u00a0hp');
    expect(said).toContain('the air makes 0.0\u00a0hp');
  });

  it('tells a gain that being rich before explains from a part', () => {
    const rich = { mean: 0.122, sd: 0.015 };
    const fair = expectOk(
      fairComparison(
        dynoPulls([145.2, 145.9, 145.5], evening, rich),
        dynoPulls([149.6, 148.8, 149.4], evening, { mean: 0.05, sd: 0.015 }),
      ),
    );
    expect(verdictSentences(fair, { part: '', ratedPower: null }).join(' ')).toContain('It was rich before');
  });

  it('sends whoever does not know the mixture to jet it right, not to repeat', () => {
    const vague = { mean: 0.05, sd: 0.06 };
    const fair = expectOk(
      fairComparison(
        dynoPulls([150, 150.1, 149.9], evening, vague),
        dynoPulls([152, 152.1, 151.9], evening, vague),
      ),
    );
    expect(fair.verdict).toBe('unclear');
    expect(verdictSentences(fair, { part: '', ratedPower: null }).join(' ')).toContain(
      'The doubt is mostly in the mixture',
    );
  });

  it('says every caveat of times in other air, single runs and a guessed pressure', () => {
    const fair = expectOk(
      fairComparison(
        timedRuns([6.4], airOf(-10, standard(400), relative(0.5))),
        timedRuns([6.5], airOf(25, station(960), relative(0.5))),
      ),
    );
    const said = fair.caveats.map((caveat) => fairCaveatSentence(caveat, METRIC_UNITS)).join(' ');
    expect(said).toContain('No side was repeated');
    expect(said).toContain('Drag changes times and speeds');
    expect(said).toContain('standard atmosphere');
    expect(said).toContain('outside the 15.0\u00a0°C to 35.0\u00a0°C');
  });

  it('says what is missing before there is anything to compare', () => {
    expect(fairProblemSentence({ code: 'no-pulls', side: 'after' })).toContain('after the part');
    expect(DEFAULT_FAIR_OPTIONS.confidence).toBe(0.9);
  });
});
