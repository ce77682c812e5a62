import type { ContractProblem, Path } from '@/lib/contract/problem';
import type { Result } from '@/lib/result/result';
import { complainOf } from './complain-of';
import type { FieldReader, FormReading } from './field-reader';

type Judging<V> = {
  readonly parse: (record: object) => Result<V, readonly ContractProblem[]>;
  /** What the schema cannot see. */
  readonly check?: (value: V) => Result<unknown, readonly ContractProblem[]>;
  readonly fieldOf: (path: Path) => string;
  /** Where clock times in a complaint are. */
  readonly zone?: string;
};

/** A record as read from a draft, judged by its schema: the value, or every complaint beside its field. */
export function formReading<V>(
  reader: FieldReader,
  record: object,
  { parse, check, fieldOf, zone = 'UTC' }: Judging<V>,
): FormReading<V> {
  const parsed = parse(record);
  const checked = parsed.ok ? check?.(parsed.value) : parsed;
  if (checked?.ok === false) complainOf(reader, checked.reason, { fieldOf, zone });
  const errors = reader.errors();
  return { value: parsed.ok && Object.keys(errors).length === 0 ? parsed.value : null, errors };
}
