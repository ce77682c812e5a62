import { type AirStateJson, airStateSchema } from '@/lib/contract/air';
import { parseWith } from '@/lib/contract/parse';
import { fieldReader } from '@/lib/fields/field-reader';
import { readGroup } from '@/lib/fields/table-values';
import type { UnitChoice } from '@/lib/units/choice';
import { AIR, type AirDraft } from './air-rows';

/** The air as typed so far, for showing what it comes to; null until it can be read. */
export function typedAir(draft: AirDraft, units: UnitChoice): AirStateJson | null {
  const read = readGroup({}, { group: AIR, values: draft, prefix: 'air.' }, fieldReader(units));
  const air = parseWith(airStateSchema, read);
  return air.ok ? air.value : null;
}
