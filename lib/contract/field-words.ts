import type * as z from 'zod/mini';

const LONGEST_QUOTE = 40;

type RawIssue = z.core.$ZodRawIssue;

/** What was found, short enough to print: an object or a long text is named by its kind. */
function found(input: unknown): string {
  if (input === null) return 'null';
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'string') return input.length <= LONGEST_QUOTE ? JSON.stringify(input) : 'a long text';
  if (typeof input === 'object') return 'an object';
  if (typeof input === 'number' && !Number.isFinite(input)) return 'a number too large to hold';
  return String(input);
}

const KINDS: Readonly<Record<string, string>> = {
  number: 'a number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
};

function wrongKind(issue: RawIssue & { code: 'invalid_type' }): string {
  if (issue.input === undefined) return 'is missing';
  return `expected ${KINDS[issue.expected] ?? issue.expected}, got ${found(issue.input)}`;
}

function outOfRange(word: 'least' | 'most', limit: number | bigint, origin: string): string {
  if (origin === 'string') return `expected at ${word} ${limit} characters`;
  if (origin === 'array') return `expected at ${word} ${limit} entries`;
  return `expected at ${word} ${limit}`;
}

/** Words for what a schema refuses and has no words of its own for. */
export function fieldWords(issue: RawIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return wrongKind(issue);
    case 'too_small':
      if (issue.origin === 'number' && issue.inclusive === false)
        return `expected more than ${issue.minimum}`;
      return outOfRange('least', issue.minimum, issue.origin);
    case 'too_big':
      if (issue.origin === 'number' && issue.inclusive === false)
        return `expected less than ${issue.maximum}`;
      return outOfRange('most', issue.maximum, issue.origin);
    case 'invalid_value':
      if (issue.input === undefined) return 'is missing';
      return `expected one of ${issue.values.map((value) => JSON.stringify(value)).join(', ')}, got ${found(issue.input)}`;
    case 'unrecognized_keys':
      return `unknown field${issue.keys.length > 1 ? 's' : ''}: ${issue.keys
        .slice(0, 5)
        .map((key) => found(key))
        .join(', ')}`;
    default:
      return issue.input === undefined ? 'is missing' : `not accepted here: ${found(issue.input)}`;
  }
}
