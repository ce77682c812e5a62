import { type CylinderVerdicts, leanestVerdict, type SaidVerdict, verdictFields } from '@/lib/carb/verdicts';
import type { CylinderProblem } from '@/lib/contract/log-csv-problem';
import { fail, ok, type Result } from '@/lib/result/result';
import type { LogRecord } from '@/lib/store/records';

/** How a cylinder that nobody looked at stands in a table. */
const NOT_LOOKED_AT = 'none';

/** "right/lean/none"; empty where all cylinders are alike. */
export function cylindersText(verdicts: LogRecord['verdicts']): string {
  return (verdicts ?? []).map((verdict) => verdict ?? NOT_LOOKED_AT).join('/');
}

type Row = {
  /** The cell of the column. */
  readonly text: string;
  readonly line: number;
  readonly mains: number;
  /** The run's own verdict, as far as it was read; null where its cell is empty. */
  readonly verdict: string | null;
  readonly sizes: number | null;
};

/** The verdict of a line that says it cylinder by cylinder; null where its cell is empty. */
export function readCylinders({
  text,
  line,
  mains,
  verdict,
  sizes,
}: Row): Result<SaidVerdict | null, CylinderProblem> {
  if (text.trim() === '') return ok(null);
  const verdicts: CylinderVerdicts[number][] = [];
  for (const part of text.toLowerCase().split('/')) {
    const word = part.trim();
    if (word === 'lean' || word === 'right' || word === 'rich') verdicts.push(word);
    else if (word === NOT_LOOKED_AT || word === '-' || word === '') verdicts.push(null);
    else return fail({ code: 'cylinder-verdict-unknown', line, text: word.slice(0, 40) });
  }
  if (verdicts.length !== mains)
    return fail({ code: 'cylinder-verdicts-do-not-fit', line, verdicts: verdicts.length, mains });
  const leanest = leanestVerdict(verdicts);
  if (verdict !== null && verdict !== leanest)
    return fail({ code: 'cylinder-verdicts-disagree', line, leanest: leanest ?? 'not judged' });
  return ok(verdictFields(verdicts, sizes));
}
