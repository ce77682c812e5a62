import type { ContractProblem, Path } from '@/lib/contract/problem';
import { contractProblemSentence } from '@/lib/words/contract-problems';
import { capital } from '@/lib/words/listing';
import type { FieldReader } from './field-reader';

/** Puts each problem of the JSON beside the field it is about, in words; `fieldOf` names the field of a place. */
export function complainOf(
  reader: FieldReader,
  problems: readonly ContractProblem[],
  { fieldOf, zone }: { readonly fieldOf: (path: Path) => string; readonly zone: string },
): void {
  for (const { path, reason } of problems) {
    const sentence = capital(contractProblemSentence(reason, { zone, units: reader.units }));
    reader.complain(fieldOf(path), /[.?!]$/.test(sentence) ? sentence : `${sentence}.`);
  }
}
