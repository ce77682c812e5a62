'use client';

import { useState } from 'react';
import { Button } from '@/components/ui/button';
import { Section } from '@/components/ui/section';
import { together } from '@/lib/words/together';
import { askToNotify, type NotifyPermission, notifyPermission } from './notify';
import type { Watch } from './use-watch';
import styles from './watch.module.css';

type WatchSectionProps = { readonly watch: Watch; readonly onAccept: () => void };

/** The accepted plan, the plan of now, and the difference in words. */
export function WatchSection({ watch: { state }, onAccept }: WatchSectionProps) {
  if (state.status === 'nothing-accepted')
    return (
      <Section title="Watch" id="watch">
        <p className={styles.words}>
          Accept a plan, and this page compares it with every newer forecast while it is open. It speaks only
          when the next thing to do changes.
        </p>
        <div className={styles.acts}>
          <Button onClick={onAccept}>This is my plan</Button>
        </div>
      </Section>
    );
  return (
    <Section title="Watch" id="watch">
      <dl className={styles.plans}>
        <dt>Your plan</dt>
        <dd>{together(state.accepted)}</dd>
        <dt>Plan now</dt>
        <dd>{state.status === 'same' ? 'The same.' : together(state.now)}</dd>
        {state.differences.length === 0 ? null : (
          <>
            <dt>Difference</dt>
            <dd>
              {state.differences.map((sentence) => (
                <p key={sentence}>{together(sentence)}</p>
              ))}
            </dd>
          </>
        )}
      </dl>
      <div className={styles.acts}>
        {state.status === 'same' ? null : <Button onClick={onAccept}>This is my plan now</Button>}
        <NotifyButton />
      </div>
    </Section>
  );
}

const WORDS: Readonly<Record<Exclude<NotifyPermission, 'default'>, string>> = {
  granted: 'This device shows a notification when the next job changes, while the page is open.',
  denied:
    'Notifications are blocked for this site; the browser’s settings can allow them. The page still says it here.',
  unsupported: 'This browser shows no notifications for pages. Keep the page open: it says it here.',
};

function NotifyButton() {
  const [permission, setPermission] = useState(notifyPermission);
  if (permission !== 'default') return <p className={styles.words}>{WORDS[permission]}</p>;
  return (
    <Button onClick={() => void askToNotify().then(setPermission)}>Notify me when the job changes</Button>
  );
}
