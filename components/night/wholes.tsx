import { Fragment } from 'react';
import { wholesOf } from '@/lib/words/together';
import styles from './wholes.module.css';

/** Words in which what is read as one stands on one line; where letters are too large for that, it is broken all the same. */
export function Wholes({ text }: { readonly text: string }) {
  return wholesOf(text).map((piece, place) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: pieces of one text, told apart by their place
    <Fragment key={place}>
      {place === 0 ? '' : ' '}
      <span className={styles.whole}>{piece}</span>
    </Fragment>
  ));
}
