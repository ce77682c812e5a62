import { Button } from '@/components/ui/button';
import { FIRST_MACHINE } from '@/lib/words/home-machine';
import styles from './machines-page.module.css';

type FirstMachineProps = { readonly onKnow: () => void; readonly onHome: () => void };

/** Which way in: by what one knows of the machine. */
export function FirstMachine({ onKnow, onHome }: FirstMachineProps) {
  return (
    <main className={styles.page}>
      <h1>Your machine</h1>
      <Button size="large" wide onClick={onKnow}>
        {FIRST_MACHINE.know}
      </Button>
      <p>{FIRST_MACHINE.knowHint}</p>
      <Button size="large" wide onClick={onHome}>
        {FIRST_MACHINE.home}
      </Button>
      <p>{FIRST_MACHINE.homeHint}</p>
    </main>
  );
}
