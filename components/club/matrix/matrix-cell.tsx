import { Jets } from '@/components/club/change';
import { classNames } from '@/components/ui/class-names';
import { VisuallyHidden } from '@/components/ui/visually-hidden';
import type { Setting } from '@/lib/carb/machine';
import { sameSetting } from '@/lib/carb/same-setting';
import type { BriefingCell } from '@/lib/club/matrix';
import { cellStateText } from '@/lib/words/club';
import { settingText } from '@/lib/words/settings';
import styles from './matrix.module.css';

type MatrixCellProps = {
  readonly cell: BriefingCell;
  /** The cell of the hour shown before it. */
  readonly before: BriefingCell | null;
};

/** What an hour starts with, what goes in during it, and how its runs stand. */
export function MatrixCell({ cell, before }: MatrixCellProps) {
  const { settings, state } = cell;
  const words = cellStateText(cell);
  const [first, ...later] = settings;
  const last = before?.settings.at(-1);
  // Between two hours that are shown something may have gone in while nobody ran.
  const isNew = first !== undefined && last !== undefined && !sameSetting(first, last);
  return (
    <td className={classNames(styles.cell, styles[state], (isNew || later.length > 0) && styles.swap)}>
      {first === undefined ? null : isNew ? (
        <Step from={last} to={first} />
      ) : (
        <span className={styles.jets}>{settingText(first)}</span>
      )}
      {later.map((setting, i) => (
        <Step key={settingText(setting)} from={settings[i] ?? setting} to={setting} />
      ))}
      {words === '' ? null : <span className={styles.word}>{words}</span>}
    </td>
  );
}

function Step({ from, to }: { readonly from: Setting; readonly to: Setting }) {
  return (
    <span className={styles.jets}>
      <VisuallyHidden>swap to </VisuallyHidden>
      <span aria-hidden="true">→ </span>
      <Jets from={from} to={to} />
    </span>
  );
}
