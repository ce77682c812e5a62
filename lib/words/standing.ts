import type { StandingTexts } from '@/lib/contract/standing-to-json';
import type { Standing } from '@/lib/standing/standing';
import { dangerSentences } from './danger';
import { questionWords } from './question';
import { riskSentence } from './risk';
import type { Voice } from './voice';

/** The texts of a standing that is written out as JSON. */
export function standingTexts(standing: Standing, { zone }: Pick<Voice, 'zone'>): StandingTexts {
  const question = questionWords(standing, zone);
  return {
    question: question === null ? '' : `${question.ask} ${question.meaning}`,
    dangers: dangerSentences(standing.dangers, standing.plan),
    risk: riskSentence(standing),
  };
}
