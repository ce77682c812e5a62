type Group = { readonly start: number; unbounded: boolean };

/** Whether *, + or {n,} stands there; ? and {n,m} come to an end. */
const repeatsForEver = (pattern: string, at: number): boolean => /^(?:[*+]|\{\d+,\})/.test(pattern.slice(at));

function endOfClass(pattern: string, start: number): number {
  let at = start + 1;
  while (at < pattern.length && pattern.charAt(at) !== ']') at += pattern.charAt(at) === '\\' ? 2 : 1;
  return at;
}

/**
 * The groups of a regular expression that repeat without end and hold something that repeats without end: what makes a
 * backtracking search take exponential time. Source: OWASP, "Regular expression Denial of Service".
 */
export function nestedRepeats(pattern: string): readonly string[] {
  const found: string[] = [];
  const open: Group[] = [];
  const mark = () => {
    for (const group of open) group.unbounded = true;
  };
  for (let at = 0; at < pattern.length; at += 1) {
    const sign = pattern.charAt(at);
    if (sign === '\\') at += 1;
    else if (sign === '[') at = endOfClass(pattern, at);
    else if (sign === '(') open.push({ start: at, unbounded: false });
    const closed = sign === ')' ? open.pop() : undefined;
    if (sign === '(' || !repeatsForEver(pattern, at + 1)) continue;
    if (closed?.unbounded) found.push(pattern.slice(closed.start, at + 2));
    mark();
  }
  return found;
}
