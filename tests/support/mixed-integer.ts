import type { RunChoice } from '@/lib/plan/choice';

/**
 * The choice as a mixed-integer programme in CPLEX LP format, written from its rules and not from the planner's code:
 * x = 1 where a run has a candidate, s = 1 where a run begins with a swap of jets, t = 1 where with a turn of the trim.
 */
type Model = { readonly rows: readonly string[]; readonly binaries: readonly string[] };

const x = (run: number, candidate: number) => `x_${run}_${candidate}`;
const s = (run: number) => `s_${run}`;
const t = (run: number) => `t_${run}`;

function each(n: number): readonly number[] {
  return Array.from({ length: n }, (_, i) => i);
}

/** "+ 3 a - 2 b"; nothing where all are zero. */
function sum(terms: readonly (readonly [number, string])[]): string {
  return terms
    .filter(([factor]) => factor !== 0)
    .map(([factor, name]) => `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`)
    .join(' ');
}

/** "a − before(a) <= right", where before the first run stands what is fitted. */
function rise(
  choice: RunChoice,
  run: number,
  given: {
    readonly members: readonly number[];
    readonly less: readonly (readonly [number, string])[];
    readonly right: number;
  },
): string {
  const now = given.members.map((c) => [1, x(run, c)] as const);
  const before = run === 0 ? [] : given.members.map((c) => [-1, x(run - 1, c)] as const);
  const fitted = run === 0 && given.members.includes(choice.start) ? 1 : 0;
  return `${sum([...now, ...before, ...given.less])} <= ${given.right + fitted}`;
}

function modelOf(choice: RunChoice): Model {
  const candidates = each(choice.candidates);
  const groups = [...new Set(choice.group)].map((g) => candidates.filter((c) => choice.group[c] === g));
  const rows = each(choice.runs).flatMap((run) => {
    const gap = choice.gaps[run]!;
    return [
      `${sum(candidates.map((c) => [1, x(run, c)]))} = 1`,
      ...groups.map((members) => rise(choice, run, { members, less: [[-1, s(run)]], right: 0 })),
      ...candidates.map((c) =>
        rise(choice, run, {
          members: [c],
          less: [
            [-1, s(run)],
            [-1, t(run)],
          ],
          right: 0,
        }),
      ),
      ...(gap === 'swap' ? [] : [`${s(run)} = 0`]),
      ...(gap === 'nothing' ? [`${t(run)} = 0`] : []),
    ];
  });
  const binaries = each(choice.runs).flatMap((run) => [...candidates.map((c) => x(run, c)), s(run), t(run)]);
  return { rows, binaries };
}

function cells(choice: RunChoice, values: Float64Array): readonly (readonly [number, string])[] {
  return each(choice.runs).flatMap((run) =>
    each(choice.candidates).map((c) => [values[run * choice.candidates + c]!, x(run, c)] as const),
  );
}

function text(model: Model, objective: string): string {
  const rows = model.rows.map((row, i) => ` r${i}: ${row}`).join('\n');
  return `Minimize\n o: ${objective || '0 s_0'}\nSubject To\n${rows}\nBinaries\n ${model.binaries.join(' ')}\nEnd\n`;
}

export type Solve = (lp: string) => {
  readonly objective: number;
  readonly valueOf: (name: string) => number;
};

/**
 * The optimum in three steps, each holding the one before: least lean risk, then fewest rich runs, then least loss with
 * swaps and turns. Lean and rich are small whole numbers, so half a unit of slack holds them exactly.
 */
export function mixedIntegerOptimum(choice: RunChoice, solve: Solve): { readonly plan: readonly number[] } {
  const model = modelOf(choice);
  const lean = sum(cells(choice, choice.lean));
  const leastLean = lean === '' ? 0 : solve(text(model, lean)).objective;
  const held = lean === '' ? model.rows : [...model.rows, `${lean} <= ${Math.round(leastLean) + 0.5}`];
  const rich = sum(cells(choice, choice.rich));
  const fewest = rich === '' ? 0 : solve(text({ ...model, rows: held }, rich)).objective;
  const heldBoth = rich === '' ? held : [...held, `${rich} <= ${Math.round(fewest) + 0.5}`];
  const changes = each(choice.runs).flatMap((run) => [
    [choice.swapCost, s(run)] as const,
    [choice.turnCost, t(run)] as const,
  ]);
  const best = solve(text({ ...model, rows: heldBoth }, sum([...cells(choice, choice.loss), ...changes])));
  const plan = each(choice.runs).map((run) =>
    each(choice.candidates).findIndex((_, c) => best.valueOf(x(run, c)) > 0.5),
  );
  return { plan };
}
