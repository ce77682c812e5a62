'use client';

import { useCallback, useEffect, useState } from 'react';
import { useHours } from '@/components/store/use-clock-zone';
import { BOARD_DOORS, type BoardDoorway, boardDoorKey, followHash } from '@/lib/share/board-address';
import type { HourStyle } from '@/lib/time/zone';
import type { NoBuzz } from '@/lib/words/board-page';

type State = { readonly buzzes: boolean; readonly why: NoBuzz | null };

/** Whether this browser buzzes for a machine, and the acts that make it and stop it. Asks the person only when pressed. */
export function useBuzz(
  { id, secret }: Pick<BoardDoorway, 'id' | 'secret'>,
  machine: string,
  pushKey: string | null,
) {
  const clock = useHours();
  const [state, setState] = useState<State>({ buzzes: false, why: null });
  const [busy, setBusy] = useState(false);
  const path = `/api/boards/${id}/subscriptions`;
  useEffect(() => {
    let gone = false;
    void followed(id).then((door) => {
      if (!gone) setState({ buzzes: door?.machine === machine && notBlocked(), why: whyNot() });
    });
    return () => {
      gone = true;
    };
  }, [id, machine]);
  const tell = useCallback(
    (method: 'PUT' | 'DELETE', body: object) =>
      fetch(path, {
        method,
        headers: { authorization: `Bearer ${secret}`, 'content-type': 'application/json' },
        body: JSON.stringify(body),
      }),
    [path, secret],
  );
  const buzz = useCallback(async () => {
    setBusy(true);
    setState(await subscribed({ id, secret, machine, pushKey, clock, tell }));
    setBusy(false);
  }, [id, secret, machine, pushKey, clock, tell]);
  // Messages go on in the clock that the page reads in, also where that was changed since.
  useEffect(() => {
    if (!state.buzzes || pushKey === null) return;
    void followed(id).then((door) =>
      door === null || door.clock === clock
        ? undefined
        : subscribed({ id, secret, machine, pushKey, clock, tell }),
    );
  }, [state.buzzes, id, secret, machine, pushKey, clock, tell]);
  const stop = useCallback(async () => {
    setBusy(true);
    const subscription = await currentSubscription();
    if (subscription !== null)
      await tell('DELETE', { endpoint: subscription.endpoint }).catch(() => undefined);
    await (await caches.open(BOARD_DOORS)).delete(boardDoorKey(id));
    setState({ buzzes: false, why: null });
    setBusy(false);
  }, [id, tell]);
  return { ...state, busy, buzz, stop };
}

type Wanted = {
  readonly id: string;
  readonly secret: string;
  readonly machine: string;
  readonly pushKey: string | null;
  readonly clock: HourStyle;
  readonly tell: (method: 'PUT', body: object) => Promise<Response>;
};

async function subscribed({ id, secret, machine, pushKey, clock, tell }: Wanted): Promise<State> {
  const why = whyNot();
  if (why !== null || pushKey === null) return { buzzes: false, why: why ?? 'server' };
  if ((await Notification.requestPermission()) !== 'granted') return { buzzes: false, why: 'blocked' };
  const subscription = await askBrowser(pushKey);
  if (subscription === null) return { buzzes: false, why: 'refused' };
  const { endpoint, keys } = subscription.toJSON();
  const asked = { subscription: { endpoint, keys }, machines: [machine], clock };
  const answer = await tell('PUT', asked).catch(() => null);
  if (answer?.ok !== true) return { buzzes: false, why: 'server' };
  const door = { hash: followHash({ id, followSecret: secret }, machine), secret, machine, clock };
  const cache = await caches.open(BOARD_DOORS);
  await cache.put(boardDoorKey(id), Response.json(door));
  return { buzzes: true, why: null };
}

async function askBrowser(pushKey: string): Promise<PushSubscription | null> {
  try {
    const { pushManager } = await navigator.serviceWorker.ready;
    return await pushManager.subscribe({ userVisibleOnly: true, applicationServerKey: pushKey });
  } catch {
    return null;
  }
}

async function currentSubscription(): Promise<PushSubscription | null> {
  const registration = await navigator.serviceWorker.getRegistration();
  return (await registration?.pushManager.getSubscription()) ?? null;
}

type Followed = { readonly machine: string; readonly clock: string };

/** The machine this browser follows on a board, and the clock it asked for; null where none. */
async function followed(id: string): Promise<Followed | null> {
  if (!('caches' in window)) return null;
  const kept = await (await caches.open(BOARD_DOORS)).match(boardDoorKey(id));
  const door: unknown = kept === undefined ? null : await kept.json();
  if (typeof door !== 'object' || door === null || !('machine' in door)) return null;
  return { machine: String(door.machine), clock: 'clock' in door ? String(door.clock) : '24' };
}

const notBlocked = () => 'Notification' in window && Notification.permission === 'granted';

/** What keeps this browser from buzzing, as far as it can be known without asking. */
function whyNot(): NoBuzz | null {
  if (!window.isSecureContext) return 'no-https';
  const apple = /iPhone|iPad/.test(navigator.userAgent);
  if (!('PushManager' in window) || !('serviceWorker' in navigator) || !('Notification' in window))
    return apple ? 'home-screen' : 'no-push';
  return Notification.permission === 'denied' ? 'blocked' : null;
}
