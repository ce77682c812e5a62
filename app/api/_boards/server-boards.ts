import { randomUUID } from 'node:crypto';
import { logFault } from '@/app/api/_http/handle';
import { servedProcess } from '@/app/api/_serve/served-process';
import { SERVER_WEATHER } from '@/app/api/_weather/server-weather';
import { countBoards } from '@/lib/posted/board-rows';
import { databasePlace, mayHoldBoards, openPosted } from '@/lib/posted/open-database';
import { settingOr } from '@/lib/posted/setting-rows';
import type { PostedDb } from '@/lib/posted/tables';
import { newPushKeys, type PushKeys, sendPush } from '@/lib/push/send-push';
import { ownServices } from '@/lib/push/services';
import { getForecast } from '@/lib/weather/get-forecast';
import type { BoardDeps } from './board-deps';
import { runDue } from './run-due';
import { createTicker, type Ticker } from './ticker';

type Server = { readonly deps: BoardDeps; readonly ticker: Ticker };

// One for the process: the framework gives each route a copy of this module.
const shared = globalThis as typeof globalThis & { heavyAirBoards?: Server };

/** How often servers of one database look for what another has left. */
const LOOK_IN_MS = 60_000;
/** Written into each message for push services that want to reach who sends (RFC 8292, section 2.1, from memory). */
const NO_CONTACT = 'mailto:nobody@example.org';

function contactOf(text: string | undefined): string {
  const contact = text?.trim() ?? '';
  if (/^https:\/\//.test(contact)) return contact;
  return contact.includes('@') ? `mailto:${contact.replace(/^mailto:/, '')}` : NO_CONTACT;
}

async function serverKeys(db: PostedDb): Promise<PushKeys> {
  const { VAPID_PUBLIC_KEY, VAPID_PRIVATE_KEY, WEATHER_CONTACT } = process.env;
  const contact = contactOf(WEATHER_CONTACT);
  if (VAPID_PUBLIC_KEY !== undefined && VAPID_PRIVATE_KEY !== undefined)
    return { publicKey: VAPID_PUBLIC_KEY, privateKey: VAPID_PRIVATE_KEY, contact };
  const kept: { publicKey: string; privateKey: string } = JSON.parse(
    await settingOr(db, 'push-keys', () => JSON.stringify(newPushKeys())),
  );
  return { ...kept, contact };
}

function createServer(): Server {
  const place = databasePlace(process.env, process.cwd());
  let opening: Promise<PostedDb> | null = null;
  const db = () => {
    opening ??= openPosted(place).catch((error: unknown) => {
      opening = null;
      throw error;
    });
    return opening;
  };
  const dbIfAny = async () => (opening !== null || mayHoldBoards(place) ? await db() : null);
  const deps: BoardDeps = {
    now: SERVER_WEATHER.now,
    db,
    dbIfAny,
    fetchForecast: (question) => getForecast(question, SERVER_WEATHER),
    pushKeys: serverKeys,
    ownServices: () => ownServices(process.env),
    send: async (push, keys) => {
      const outcome = await sendPush(push, { keys, own: ownServices(process.env) });
      // Told without its host: a push service may have one for each phone.
      if (outcome.kind === 'later' || outcome.kind === 'refused')
        servedProcess()?.upstreamFailed('push', outcome.kind);
      return outcome;
    },
    me: randomUUID(),
    wake: () => ticker.wake(),
  };
  const ticker = createTicker({
    dbIfAny,
    now: deps.now,
    runDue: (open) => runDue({ db: open, deps }, logFault),
    tell: logFault,
    lookInMs: place.engine === 'postgres' ? LOOK_IN_MS : null,
  });
  return { deps, ticker };
}

function server(): Server {
  shared.heavyAirBoards ??= createServer();
  return shared.heavyAirBoards;
}

export function serverBoards(): BoardDeps {
  return server().deps;
}

/** Goes on with what was posted before this process started. */
export function startBoards(): void {
  server().ticker.wake();
}

/** Whether the boards' database answers; true where there is none yet. */
export async function boardsAnswer(): Promise<boolean> {
  const db = await serverBoards().dbIfAny();
  if (db !== null) await countBoards(db);
  return true;
}
