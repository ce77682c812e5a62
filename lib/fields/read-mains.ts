import { readSizes } from '@/lib/carb/box-text';
import type { FieldReader } from './field-reader';

type TypedMains = { readonly name: string; readonly text: string; readonly carburettors: number };

/** "410", or "410 400 410" with one jet for each carburettor; undefined where it cannot be read. */
export function readMainsText(
  { name, text, carburettors }: TypedMains,
  reader: FieldReader,
): readonly number[] | undefined {
  const sizes = readSizes(text);
  if (!sizes.ok) {
    reader.complain(name, 'Type the main jet, or one for each carburettor: 410 or 410 400 410.');
    return undefined;
  }
  const mains = sizes.value;
  if (mains.length === 1) return Array.from({ length: carburettors }, () => mains[0]!);
  if (mains.length === carburettors) return mains;
  reader.complain(
    name,
    `${mains.length} jets are typed for ${carburettors} carburettors. Type one for each.`,
  );
  return undefined;
}
