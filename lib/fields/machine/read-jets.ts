import { boxFromRange } from '@/lib/carb/box';
import { readBoxText } from '@/lib/carb/box-text';
import type { Box } from '@/lib/carb/machine';
import type { FieldReader } from '@/lib/fields/field-reader';
import { readNumber } from '@/lib/units/entry';
import { boxProblemWords } from '@/lib/words/box-text';
import { MACHINE, type MachineDraft } from './machine-rows';

/** The mains of all carburettors, one for each; undefined where one cannot be read. */
export function readMains(draft: MachineDraft, reader: FieldReader): readonly { main: number | undefined }[] {
  const count = Number(draft.carburettors);
  if (!draft.staggered) {
    const main = reader.read('number', { name: 'main', text: draft.main, example: '410' });
    return Array.from({ length: count }, () => ({ main }));
  }
  return draft.mains
    .slice(0, count)
    .map((text, i) => ({ main: reader.read('number', { name: `mains.${i}`, text, example: '410' }) }));
}

const LIST_EXAMPLE = 'Type one jet per line: its number, then its area or flow. For example: 410 1.00';

/** The marking; for a list, its lines of "size area". */
export function readMarking(draft: MachineDraft, reader: FieldReader): unknown {
  if (draft.marking !== 'list') return draft.marking;
  const lines = draft.list.split('\n').filter((line) => line.trim() !== '');
  if (lines.length < 2) reader.complain('list', `List at least two jets. ${LIST_EXAMPLE}`);
  const list = lines.map((line) => {
    const [size, area, ...rest] = line
      .trim()
      .split(/[\s;=:]+/)
      .map((word) => readNumber(word));
    if (size?.ok && area?.ok && rest.length === 0) return { size: size.value, area: area.value };
    reader.complain('list', `“${line.trim()}” is not a jet with its area. ${LIST_EXAMPLE}`);
    return null;
  });
  return { list };
}

const MOST_SIZES = 100;

/** The box, typed or as a range. */
export function readBox(draft: MachineDraft['box'], reader: FieldReader): Box | undefined {
  if (draft.how === 'range') return readRange(draft, reader);
  const box = readBoxText(draft.text);
  if (box.ok) return box.value;
  reader.complain('box.text', boxProblemWords(box.reason));
  return undefined;
}

function readRange(draft: MachineDraft['box'], reader: FieldReader): Box | undefined {
  const number = (key: 'from' | 'to' | 'by' | 'each'): number | undefined => {
    const { example } = MACHINE.box.rows[key];
    return reader.read('number', { name: `box.${key}`, text: draft[key], example: String(example) });
  };
  const [lowest, highest, step, count] = [number('from'), number('to'), number('by'), number('each')];
  if (lowest === undefined || highest === undefined || step === undefined || count === undefined)
    return undefined;
  const complaint = rangeComplaint({ lowest, highest, step, count });
  if (complaint === null) return boxFromRange({ lowest, highest, step, count });
  reader.complain(`box.${complaint.key}`, complaint.sentence);
  return undefined;
}

type Range = Parameters<typeof boxFromRange>[0];

function rangeComplaint({
  lowest,
  highest,
  step,
  count,
}: Range): { readonly key: string; readonly sentence: string } | null {
  if (lowest <= 0) return { key: 'from', sentence: 'A jet size is greater than 0.' };
  if (highest < lowest)
    return { key: 'to', sentence: `${highest} is smaller than ${lowest}. Type the smallest jet first.` };
  if (step <= 0) return { key: 'by', sentence: 'The step between two jets is greater than 0.' };
  if ((highest - lowest) / step + 1 > MOST_SIZES)
    return { key: 'by', sentence: `That makes more than ${MOST_SIZES} sizes. Check the step.` };
  if (count < 1 || count > 99 || !Number.isInteger(count))
    return { key: 'each', sentence: 'How many of each is a whole number from 1 to 99.' };
  return null;
}
