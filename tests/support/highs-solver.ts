import loadHighs from 'highs';
import type { Solve } from './mixed-integer';

/** HiGHS (https://highs.dev, MIT licence) through the package `highs`, asked for the exact optimum. */
export async function highsSolver(): Promise<Solve> {
  const highs = await loadHighs();
  return (lp) => {
    const answer = highs.solve(lp, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 1e-7 });
    if (answer.Status !== 'Optimal') throw new Error(`HiGHS ended with ${answer.Status}`);
    return {
      objective: answer.ObjectiveValue,
      valueOf: (name) => {
        const column = answer.Columns[name];
        if (column === undefined || !('Primal' in column)) throw new Error(`no variable ${name}`);
        return column.Primal ?? Number.NaN;
      },
    };
  };
}
