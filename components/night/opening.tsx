import early from './early/early-answer.module.css';
import { useEarlyAnswer } from './early/use-early-answer';
import styles from './night-page.module.css';
// The looks of the first screen come with the page, since it is drawn before the room has arrived.
import '@/components/ui/visually-hidden.module.css';
import './plate/plate.module.css';
import './plate/top-line.module.css';
import './plate/in-now.module.css';
import './plate/gauge.module.css';
import './plate/next-block.module.css';
// What else the room has to itself: less than two kilobytes, and else a request of its own.
import '@/components/watch/watch.module.css';
import './call.module.css';

/**
 * What stands here until the night has been read from this browser: the first screen as the page's worker has drawn it
 * for who comes for the first time, else no number that could be taken for a plan.
 */
export function Opening() {
  const answer = useEarlyAnswer();
  if (answer !== null)
    // The very nodes that stand there already, so that nothing flickers.
    return <div className={early.noPlaceOfItsOwn} ref={(place) => place?.append(answer)} />;
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
