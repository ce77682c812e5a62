import { firstDraft } from '@/lib/fields/trail/first-draft';
import type { RideDraft } from '@/lib/fields/trail/trail-rows';
import { METRIC_UNITS, type UnitChoice, US_UNITS } from '@/lib/units/choice';
import { readElevation, readTemperature } from '@/lib/units/entry';
import type { ExampleParts } from '@/lib/words/example-ride';

/** The example as either kind of units opens it: a draft keeps its heights and temperatures when units change. */
const EXAMPLES = [METRIC_UNITS, US_UNITS].map((units) => ({
  units,
  draft: firstDraft({ units, timezone: 'UTC', date: '2027-01-16' }),
}));

/** Rounding on the way through other units moves a height [m] or a temperature [K] by less than this. */
const ROUNDING = 0.2;

type Reader = (text: string, units: UnitChoice) => number | null;
type Wanted = (typeof EXAMPLES)[number]['draft'];

const height: Reader = (text, { elevation }) => {
  const read = readElevation(text, elevation);
  return read.ok ? read.value : null;
};
const warmth: Reader = (text, { temperature }) => {
  const read = readTemperature(text, temperature);
  return read.ok ? read.value : null;
};

/** Whether texts still say what those of the example say. */
function still(
  texts: readonly string[],
  { units, read, of }: { units: UnitChoice; read: Reader; of: (draft: Wanted) => readonly string[] },
): boolean {
  return EXAMPLES.some(({ units: theirs, draft }) => {
    const wanted = of(draft);
    return (
      texts.length === wanted.length &&
      texts.every((text, i) => {
        const [here, there] = [read(text, units), read(wanted[i] ?? '', theirs)];
        return here !== null && there !== null && Math.abs(here - there) < ROUNDING;
      })
    );
  });
}

/** What of a ride is still the page's example, whatever names and clock times were put to it. */
export function exampleParts(ride: RideDraft, units: UnitChoice): ExampleParts {
  const heights = ({ places }: RideDraft) => places.map(({ elevation }) => elevation);
  const temperatures = ({ hours }: RideDraft) => hours.map(({ temperature }) => temperature);
  return {
    places:
      ride.way === 'typed' &&
      still(heights(ride), { units, read: height, of: (draft) => heights(draft.ride) }),
    hours:
      ride.air === 'typed' &&
      still(temperatures(ride), { units, read: warmth, of: (draft) => temperatures(draft.ride) }),
  };
}

/** Whether the elevation of the place is the one the page opens with. */
export function isExampleElevation(elevation: string, units: UnitChoice): boolean {
  return still([elevation], { units, read: height, of: (draft) => [draft.elevation] });
}
