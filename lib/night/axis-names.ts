/** Every how many hours one is named, where not all can be. */
const EVERY = [1, 2, 3, 4, 6, 12] as const;
/** Air between the names of two hours [px]. */
const HOUR_AIR = 12;

type NamedHour = {
  /** Of the local day, so that the same hours are named every day. */
  readonly hour: number;
  /** Where its middle stands, and how wide its name is [px]. */
  readonly x: number;
  readonly width: number;
};

/** Which hours are named: every one, or every second, third and so on, as their names keep clear of each other. */
export function hoursNamed<H extends NamedHour>(hours: readonly H[], width: number): readonly H[] {
  const whole = hours.filter(({ x, width: name }) => x - name / 2 >= 0 && x + name / 2 <= width);
  const shown = EVERY.map((every) => whole.filter(({ hour }) => hour % every === 0));
  return shown.find(haveAir) ?? shown.at(-1) ?? [];
}

const haveAir = (hours: readonly NamedHour[]): boolean =>
  hours.every((hour, i) => {
    const next = hours[i + 1];
    return next === undefined || next.x - next.width / 2 - (hour.x + hour.width / 2) >= HOUR_AIR;
  });

/** Which sizes are named on an axis of this height, from the smallest up: as many as have room one over the other. */
export function sizesNamed(
  sizes: readonly number[],
  { least, most }: { readonly least: number; readonly most: number },
  { height, line }: { readonly height: number; readonly line: number },
): readonly number[] {
  const perSize = height / (most - least);
  const named: number[] = [];
  for (const size of sizes) {
    const last = named.at(-1);
    if (last === undefined || (size - last) * perSize >= line) named.push(size);
  }
  return named;
}
