'use client';

import { useState } from 'react';
import { Notice } from '@/components/ui/notice';
import type { Stored, TableValue } from '@/lib/store/records';
import { ELSEWHERE } from '@/lib/words/elsewhere';
import { useTable } from './use-table';
import type { FormTable } from './use-write';

type FormGoneProps = { readonly table: FormTable; readonly id: string };

/**
 * The record a form stands on. Another one that is chosen meanwhile takes its place only while the first is still
 * there to go back to; once that is deleted, the form stays with it. Key the form by its id.
 */
export function useFormRecord<T extends FormTable>(
  table: T,
  chosen: Stored<TableValue[T]>,
): Stored<TableValue[T]> {
  const rows = useTable(table);
  const [opened, setOpened] = useState(chosen);
  const moves = opened.id !== chosen.id && rows?.some(({ id }) => id === opened.id) === true;
  if (moves) setOpened(chosen);
  return moves ? chosen : opened;
}

/** Said over a form whose record another tab deleted: the form stays, and so does what was typed. */
export function FormGone({ table, id }: FormGoneProps) {
  const rows = useTable(table);
  if (rows === null || rows.some((row) => row.id === id)) return null;
  return <Notice tone="caution" title={ELSEWHERE.formGone} />;
}
