// A server as far as boards go, in a process of its own that can be killed: takes what is due, plans it, sends it, writes
// it down. Its clock and its weather are told to it.
import { randomUUID } from 'node:crypto';
import type { BoardDeps } from '@/app/api/_boards/board-deps';
import { runDue } from '@/app/api/_boards/run-due';
import { type DatabasePlace, openPosted } from '@/lib/posted/open-database';
import { newPushKeys, sendPush } from '@/lib/push/send-push';
import { ok } from '@/lib/result/result';
import { type Instant, instant } from '@/lib/time/instant';
import { metre } from '@/lib/units/quantity';
import { boardForecast } from '@/tests/support/board-forecast';
import { evening } from './evening';

export type ServerOrder = { readonly place: DatabasePlace; readonly push: string };

const order: ServerOrder = JSON.parse(process.env.SERVER_ORDER ?? '');
const db = await openPosted(order.place);
const keys = { ...newPushKeys(), contact: 'mailto:tests@example.org' };
const me = randomUUID();
let now: Instant = instant(0);
const deps: BoardDeps = {
  now: () => now,
  db: () => Promise.resolve(db),
  dbIfAny: () => Promise.resolve(db),
  fetchForecast: ({ from, hours, elevation }) =>
    Promise.resolve(ok(boardForecast(from, hours, { ...evening(now), elevation: elevation ?? metre(0) }))),
  pushKeys: () => Promise.resolve(keys),
  ownServices: () => [order.push],
  send: (push, signed) => sendPush(push, { keys: signed, own: [order.push] }),
  me,
  wake: () => undefined,
};

let running = false;
let again = false;
async function work(): Promise<void> {
  again = true;
  if (running) return;
  running = true;
  while (again) {
    again = false;
    await runDue({ db, deps }, (error) => process.send?.({ fault: String(error) }));
  }
  running = false;
}

process.on('message', (told: { readonly now: number }) => {
  now = instant(told.now);
  void work();
});
process.on('disconnect', () => process.exit(0));
process.send?.({ me });
