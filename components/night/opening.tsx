import styles from './night-page.module.css';

/** What stands here until the night has been read from this browser: no number that could be taken for a plan. */
export function Opening() {
  return (
    <main className={styles.waiting} aria-busy="true">
      <h1 className={styles.question}>Which jets, when?</h1>
      <p>Opening the night…</p>
      <p>
        Heavy Air plans main jets against the weather of the night: what to start on, when to swap, and how
        sure that is. What you enter stays in this browser.
      </p>
      <noscript>
        <p>This page computes in the browser and needs JavaScript. Allow it for this site, then reload.</p>
      </noscript>
    </main>
  );
}
