'use client';

import { useMemo, useState } from 'react';
import { Combobox } from '@/components/ui/combobox';
import type { FieldWords } from '@/components/ui/field';
import { matchingZones } from '@/lib/time/zone-search';
import { knownZones } from './zones';

type ZoneFieldProps = FieldWords & {
  readonly name: string;
  /** A zone, or what was typed of one so far. */
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly onBlur?: () => void;
};

/** A time zone, found by a big city of it. */
export function ZoneField({ value, ...field }: ZoneFieldProps) {
  const [zones] = useState(knownZones);
  const matching = useMemo(() => matchingZones(value, zones), [value, zones]);
  return <Combobox {...field} value={value} options={zones.includes(value) ? zones : matching} />;
}
