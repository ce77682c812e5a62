const LONGEST_NAME = 80;

/** The form in which two names are the same to a person reading a list. */
export const sameName = (name: string): string => name.trim().toLowerCase();

/**
 * Names of one list, told apart: the first of a kind keeps its name, each later one gets the next number that is free.
 * "Twin 440", "Twin 440 (2)", "Twin 440 (3)". No name comes out longer than a name may be (80 characters).
 *
 * @param taken names that stand in the list before these
 */
export function toldApart(names: readonly string[], taken: readonly string[] = []): readonly string[] {
  const used = new Set(taken.map(sameName));
  return names.map((name) => {
    let apart = name;
    for (let number = 2; used.has(sameName(apart)); number += 1) apart = numbered(name, number);
    used.add(sameName(apart));
    return apart;
  });
}

function numbered(name: string, number: number): string {
  const end = ` (${number})`;
  return `${name.slice(0, LONGEST_NAME - end.length)}${end}`;
}
