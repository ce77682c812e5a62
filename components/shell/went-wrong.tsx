'use client';

import { Button } from '@/components/ui/button';
import { Notice } from '@/components/ui/notice';
import styles from './went-wrong.module.css';

type WentWrongProps = { readonly error: unknown; readonly retry: () => void };

/** What an unforeseen fault looks like: words, what is safe, what to do. */
export function WentWrong({ error, retry }: WentWrongProps) {
  return (
    <main className={styles.place}>
      <Notice
        tone="danger"
        title="Something in this page broke."
        act={
          <>
            <Button kind="primary" onClick={retry}>
              Try again
            </Button>
            <Button onClick={() => window.location.reload()}>Reload the page</Button>
          </>
        }
      >
        <p>
          What you entered is kept in this browser. Until the page works again, put in no jets by it: go by
          your last call or your proven baseline.
        </p>
        {error instanceof Error ? <p>The fault, for a report: {error.message}</p> : null}
      </Notice>
    </main>
  );
}
