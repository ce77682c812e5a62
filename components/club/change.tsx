import type { Setting } from '@/lib/carb/machine';
import { sameMains } from '@/lib/carb/same-setting';
import { settingText } from '@/lib/words/settings';
import styles from './change.module.css';

type ChangeProps = { readonly from: Setting; readonly to: Setting };

/** "400 390 400 → 410 400 410" with the jets that change set off. */
export function Change({ from, to }: ChangeProps) {
  if (sameMains(from.mains, to.mains))
    return (
      <span className={styles.change}>
        trim {from.trim} → <b className={styles.changed}>trim {to.trim}</b>
      </span>
    );
  return (
    <span className={styles.change}>
      <span className={styles.jets}>{settingText(from)}</span> →{' '}
      <span className={styles.jets}>
        <Jets from={from} to={to} />
      </span>
    </span>
  );
}

/** The jets of `to`, one by one where they differ; what is not in `from` at the same place is set off. */
export function Jets({ from, to }: ChangeProps) {
  const trim = to.trim === null ? null : `, trim ${to.trim}`;
  if (new Set(to.mains).size === 1 && to.mains.every((main, i) => main !== from.mains[i]))
    return (
      <>
        <b className={styles.changed}>{to.mains[0]}</b>
        {trim}
      </>
    );
  return (
    <>
      {to.mains.map((main, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a carburettor is its place
        <span key={i}>
          {i === 0 ? '' : ' '}
          {main === from.mains[i] ? main : <b className={styles.changed}>{main}</b>}
        </span>
      ))}
      {trim}
    </>
  );
}
