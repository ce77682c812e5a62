/** Coordinates go out with four decimals (11 m): finer ones are refused by MET Norway and mean nothing to a forecast. */
const DECIMALS = 4;

export function coordinate(degrees: number): string {
  return String(roundCoordinate(degrees));
}

export function roundCoordinate(degrees: number): number {
  // + 0 turns -0 into 0, which would otherwise make two keys for one place.
  return Number(degrees.toFixed(DECIMALS)) + 0;
}

/** The address of a question: a base from the settings, a fixed path and parameters. */
export function address(
  base: string,
  path: string,
  parameters: Readonly<Record<string, string>> = {},
): string {
  const query = new URLSearchParams(parameters).toString();
  return query === '' ? `${base}${path}` : `${base}${path}?${query}`;
}
