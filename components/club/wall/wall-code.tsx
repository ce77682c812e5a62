import dynamic from 'next/dynamic';
import { boardCodeTitle } from '@/lib/words/board-page';
import styles from './wall.module.css';

/** What draws codes comes only where the night is posted. */
const PhoneCode = dynamic(() => import('@/components/share/phone-code').then((module) => module.PhoneCode), {
  ssr: false,
});

type WallCodeProps = {
  readonly board: { readonly id: string; readonly followSecret: string };
  readonly night: string;
};

/** The way from the trailer wall to a racer's phone. */
export function WallCode({ board, night }: WallCodeProps) {
  return (
    <div className={styles.code}>
      <PhoneCode board={board} title={boardCodeTitle(night)} />
    </div>
  );
}
