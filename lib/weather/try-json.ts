import * as z from 'zod';
import { instantFromJson } from '@/lib/contract/event-from-json';
import { time } from '@/lib/contract/numbers';
import { isoUtc } from '@/lib/time/zone';
import { CONTRADICTIONS } from './checks/contradiction';
import type { SourceTry } from './problem';
import { SOURCE_NAMES } from './source-name';

const problemSchema = z.discriminatedUnion('code', [
  z.strictObject({
    code: z.enum([
      'timeout',
      'unreachable',
      'redirected',
      'too-large',
      'not-json',
      'busy',
      'no-pressure',
      'no-hours',
      'outside-area',
      'no-contact',
      'bad-address',
      'slow',
      ...CONTRADICTIONS,
    ]),
  }),
  z.strictObject({ code: z.literal('bad-status'), status: z.int() }),
  z.strictObject({ code: z.enum(['rate-limited', 'resting']), until: time }),
  z.strictObject({ code: z.literal('unexpected-shape'), field: z.string() }),
  z.strictObject({ code: z.literal('wrong-units'), field: z.string(), unit: z.string() }),
  z.strictObject({ code: z.literal('implausible'), field: z.string(), value: z.number() }),
]);

/** A service that was asked and not used, and why. */
export const sourceTryJsonSchema = z.strictObject({ source: z.enum(SOURCE_NAMES), problem: problemSchema });

export type SourceTryJson = z.output<typeof sourceTryJsonSchema>;

export function tryToJson({ source, problem }: SourceTry): SourceTryJson {
  if ('until' in problem) return { source, problem: { code: problem.code, until: isoUtc(problem.until) } };
  return { source, problem };
}

export function tryFromJson({ source, problem }: SourceTryJson): SourceTry {
  if ('until' in problem)
    return { source, problem: { code: problem.code, until: instantFromJson(problem.until) } };
  return { source, problem };
}
