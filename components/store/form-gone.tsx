'use client';

import { Notice } from '@/components/ui/notice';
import { ELSEWHERE } from '@/lib/words/elsewhere';
import { useTable } from './use-table';
import type { FormTable } from './use-write';

type FormGoneProps = { readonly table: FormTable; readonly id: string };

/** Said over a form whose record another tab deleted: the form stays, and so does what was typed. */
export function FormGone({ table, id }: FormGoneProps) {
  const rows = useTable(table);
  if (rows === null || rows.some((row) => row.id === id)) return null;
  return <Notice tone="caution" title={ELSEWHERE.formGone} />;
}
