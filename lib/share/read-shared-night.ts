import type { LinkProblem } from '@/lib/contract/link-problem';
import { parseWith } from '@/lib/contract/parse';
import { pathText } from '@/lib/contract/problem';
import { fail, type Result } from '@/lib/result/result';
import { type SharedNight, sharedNightSchema } from './shared-night';

/** Unknown data as a night, or the first field that is not what a night needs. */
export function readSharedNight(data: unknown): Result<SharedNight, LinkProblem> {
  const read = parseWith(sharedNightSchema, data);
  if (read.ok) return read;
  const [first] = read.reason;
  const message = first?.reason.code === 'field' ? first.reason.message : '';
  return fail({ code: 'not-a-night', path: pathText(first?.path ?? []), message });
}
