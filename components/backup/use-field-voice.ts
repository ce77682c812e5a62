'use client';

import { useMemo } from 'react';
import { useHours } from '@/components/store/use-clock-zone';
import { usePreferences } from '@/components/store/use-preferences';
import { useTable } from '@/components/store/use-table';
import type { FieldVoice } from '@/lib/words/merged-field';

/** What sentences about fields need: a person's units and clock, and names of machines, of here and of a file. */
export function useFieldVoice(
  others: readonly {
    readonly id: string;
    readonly value: { readonly machine: { readonly name: string } };
  }[] = NONE,
): FieldVoice {
  const { preferences } = usePreferences();
  const machines = useTable('machines');
  const hours = useHours();
  return useMemo(() => {
    const names = new Map([...others, ...(machines ?? [])].map(({ id, value }) => [id, value.machine.name]));
    return { units: preferences, hours, machineName: (id) => names.get(id) ?? '' };
  }, [others, machines, preferences, hours]);
}

const NONE: readonly never[] = [];
