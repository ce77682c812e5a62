import { type FormReading, fieldReader, ifTyped } from '@/lib/fields/field-reader';
import type { Instant } from '@/lib/time/instant';
import type { UnitChoice } from '@/lib/units/choice';
import { type Metre, metre } from '@/lib/units/quantity';
import { readMetar } from '@/lib/weather/metar/read-metar';
import { type Offer, offerOf } from '@/lib/weather/stations/offer';
import { metarProblemSentence } from '@/lib/words/observations';
import type { Voice } from '@/lib/words/voice';

/** A pasted report, and where its airfield lies as far as the person knows. */
export type ReportDraft = { readonly report: string; readonly distance: string; readonly elevation: string };

type Around = {
  readonly now: Instant;
  readonly site: Metre;
  readonly units: UnitChoice;
  readonly voice: Pick<Voice, 'zone'>;
};

/** Farther away it is another region's weather. */
const FARTHEST_KM = 500;

/** What a pasted report offers to the site, or what is wrong with which field. */
export function readReport(draft: ReportDraft, { now, site, units, voice }: Around): FormReading<Offer> {
  const reader = fieldReader(units);
  const observed = readMetar(draft.report, now);
  if (!observed.ok) reader.complain('report', metarProblemSentence(observed.reason, voice));
  const away = ifTyped(draft.distance, () =>
    reader.read('way', { name: 'distance', text: draft.distance, example: '12' }),
  );
  if (away !== undefined && !(away >= 0 && away <= FARTHEST_KM))
    reader.complain('distance', 'That is too far away to say anything about the track. Check the number.');
  const height = ifTyped(draft.elevation, () =>
    reader.read('elevation', {
      name: 'elevation',
      text: draft.elevation,
      example: units.elevation === 'ft' ? '1400' : '420',
    }),
  );
  const errors = reader.errors();
  if (!observed.ok || Object.keys(errors).length > 0) return { value: null, errors };
  const station = {
    distance: away === undefined ? null : metre(away * 1000),
    elevation: height === undefined ? null : metre(height),
  };
  return { value: offerOf(observed.value, { name: '', station, site }), errors };
}
