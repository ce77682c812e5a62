import type { ReactNode } from 'react';
import { classNames } from './class-names';
import styles from './notice.module.css';

type Tone = 'note' | 'caution' | 'danger';

type NoticeProps = {
  /** `danger` interrupts a screen reader; the others wait their turn. */
  readonly tone?: Tone;
  readonly title?: string;
  /** What can be done about it. */
  readonly act?: ReactNode;
  readonly children?: ReactNode;
};

const WORD = { note: 'Note', caution: 'Caution', danger: 'Stop' } as const;

/** The word of a tone in its shape, also for what is no notice and is heard as one. */
export function NoticeWord({ tone }: { readonly tone: Tone }) {
  return <span className={classNames(styles.word, tone === 'danger' && styles.stop)}>{WORD[tone]}</span>;
}

/** Something to know, set off by a rule and a word, not by colour alone. */
export function Notice({ tone = 'note', title, act, children }: NoticeProps) {
  return (
    <div className={classNames(styles.notice, styles[tone])} role={tone === 'danger' ? 'alert' : 'note'}>
      <p className={styles.title}>
        <NoticeWord tone={tone} /> {title ? <span>{title}</span> : null}
      </p>{' '}
      {/* On paper all of it is one line. */}
      {children ? <div className={styles.body}>{children}</div> : null}
      {act ? <div className={styles.act}>{act}</div> : null}
    </div>
  );
}
