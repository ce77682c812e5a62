export type NotifyPermission = 'granted' | 'denied' | 'default' | 'unsupported';

export function notifyPermission(): NotifyPermission {
  return 'Notification' in window ? Notification.permission : 'unsupported';
}

/** Asks the person; only ever called from an act of theirs. */
export async function askToNotify(): Promise<NotifyPermission> {
  return 'Notification' in window ? Notification.requestPermission() : 'unsupported';
}

/** One notice at a time: a newer one takes the place of the older. */
const TAG = 'next-act';

/** Shows a notification where allowed. Never throws: the page says the same by itself. */
export async function notify(title: string, body: string): Promise<void> {
  if (notifyPermission() !== 'granted') return;
  try {
    // Phones show notifications only through a worker.
    const registration = await navigator.serviceWorker?.getRegistration();
    if (registration?.active) await registration.showNotification(title, { body, tag: TAG });
    else new Notification(title, { body, tag: TAG });
  } catch {
    // A browser that allows but cannot show: nothing is lost, the words stand on the page.
  }
}
