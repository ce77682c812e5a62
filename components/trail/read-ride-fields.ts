import type { FieldReader } from '@/lib/fields/field-reader';
import type { FieldRow } from '@/lib/fields/field-row';
import { readNumberRow } from '@/lib/fields/table-values';
import { metre } from '@/lib/units/quantity';

export function heightOf(row: FieldRow, text: string, name: string, reader: FieldReader) {
  const height = readNumberRow(row, text, name, reader);
  return height === undefined ? null : metre(height);
}
