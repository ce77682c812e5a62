import type { ContractProblem, Path } from '@/lib/contract/problem';
import { contractProblemSentence } from '@/lib/words/contract-problems';
import { capital } from '@/lib/words/listing';
import type { Voice } from '@/lib/words/voice';
import type { FieldReader } from './field-reader';

type ToFields = {
  /** The name of the field that a place in the JSON was typed in. */
  readonly fieldOf: (path: Path) => string;
  readonly voice: Voice;
};

/** Puts each problem of the JSON beside the field it is about, in words. */
export function complainOf(
  reader: FieldReader,
  problems: readonly ContractProblem[],
  { fieldOf, voice }: ToFields,
): void {
  for (const { path, reason } of problems) {
    const sentence = capital(contractProblemSentence(reason, voice));
    reader.complain(fieldOf(path), /[.?!]$/.test(sentence) ? sentence : `${sentence}.`);
  }
}
