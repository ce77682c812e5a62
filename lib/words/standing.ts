import type { StandingTexts } from '@/lib/contract/standing-to-json';
import type { Standing } from '@/lib/standing/standing';
import { dangerSentences } from './danger';
import { questionWords } from './question';
import { readingWorthSentence } from './reading-worth';
import { riskSentence } from './risk';
import type { Voice } from './voice';

/** The texts of a standing that is written out as JSON. */
export function standingTexts(standing: Standing, voice: Voice): StandingTexts {
  const question = questionWords(standing, voice.zone);
  return {
    question: question === null ? '' : `${question.ask} ${question.meaning}`,
    dangers: dangerSentences(standing.dangers, standing.plan),
    risk: riskSentence(standing),
    reading: readingWorthSentence(standing, voice) ?? '',
  };
}
