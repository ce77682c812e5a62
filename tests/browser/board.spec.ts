import { type BrowserContext, expect, type Page } from '@playwright/test';
import { addMinutes } from '@/lib/time/instant';
import { boardServer } from './board-server';
import { EVENING, instantOf } from './clock';
import { test } from './test';
import { accessFaults } from './watched-page';
import { answerPlaces } from './weather-answers';

// The forecasts here are dated.
test.use({ now: EVENING });
// Two starts of a server and a first visit with all its files.
test.setTimeout(300_000);

/** A first visit keeps the whole app before its worker is ready. */
const SLOW = { timeout: 45_000 };

const PORT = Number(process.env.TEST_PORT ?? 3210) + 5;

/** The demo night, planned with a forecast of this server and no typed hours. */
async function nightByForecast(page: Page, origin: string): Promise<void> {
  await answerPlaces(page);
  await page.goto(`${origin}/`);
  await page.getByRole('link', { name: 'Get the forecast' }).click();
  await page.getByRole('button', { name: 'Get the forecast' }).click();
  await page.getByRole('button', { name: 'Go by the forecast alone' }).click({ timeout: 45_000 });
  await expect(page.getByRole('cell', { name: 'typed' })).toHaveCount(0);
}

/** A phone's browser that has no push service in reach: it is handed a subscription of ours. */
async function phoneWith(context: BrowserContext, subscription: object): Promise<Page> {
  const page = await context.newPage();
  await page.addInitScript((given) => {
    const kept = { ...given, endpoint: (given as { endpoint: string }).endpoint, toJSON: () => given };
    PushManager.prototype.subscribe = () => Promise.resolve(kept as never);
    PushManager.prototype.getSubscription = () => Promise.resolve(kept as never);
    // A browser without windows allows none, whatever it is granted.
    Object.defineProperty(Notification, 'permission', { get: () => 'granted' });
    Notification.requestPermission = () => Promise.resolve('granted');
  }, subscription);
  return page;
}

/** Hands a message to the page's worker as the browser's push service would. */
async function deliver(page: Page, origin: string, data: string): Promise<void> {
  const session = await page.context().newCDPSession(page);
  const found = new Promise<string>((resolve) =>
    session.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const own = registrations.find(({ scopeURL }) => scopeURL.startsWith(origin));
      if (own !== undefined) resolve(own.registrationId);
    }),
  );
  await session.send('ServiceWorker.enable');
  await session.send('ServiceWorker.deliverPushMessage', { origin, registrationId: await found, data });
}

type Shown = {
  readonly title: string;
  readonly body: string;
  readonly data: unknown;
  readonly actions: unknown;
};
type Worker = {
  registration: { showNotification: (title: string, options: object) => Promise<void> };
  shown?: Shown[];
  dispatchEvent: (event: Event) => boolean;
};

const workerOf = (context: BrowserContext) => context.serviceWorkers()[0]!;

/** A browser without windows shows no notification: the worker's are kept where the test can see them. */
async function keepShown(context: BrowserContext): Promise<void> {
  await workerOf(context).evaluate(() => {
    const self = globalThis as unknown as Worker;
    const shown: Shown[] = [];
    self.shown = shown;
    self.registration.showNotification = (title, options) => {
      shown.push({ title, ...options } as Shown);
      return Promise.resolve();
    };
  });
}

const shown = (context: BrowserContext): Promise<readonly Shown[]> =>
  workerOf(context).evaluate(() => (globalThis as unknown as Worker).shown ?? []);

/** Presses the last notification, or a button on it, from inside the worker: no protocol has a finger for it. */
async function press(context: BrowserContext, action: string): Promise<void> {
  await workerOf(context).evaluate(async (pressed) => {
    const self = globalThis as unknown as Worker;
    const { data } = self.shown!.at(-1)!;
    const work: Promise<unknown>[] = [];
    const event = Object.assign(new Event('notificationclick'), {
      notification: { data, close: () => undefined },
      action: pressed,
      waitUntil: (one: Promise<unknown>) => work.push(one),
    });
    self.dispatchEvent(event);
    // To bring a window to the front takes a finger; the address is open by then.
    await Promise.allSettled(work);
  }, action);
}

test('a posted night buzzes a phone once when it turns 4 K colder, and hears back that it is in', async ({
  page,
  newContext,
}) => {
  const evening = instantOf(EVENING);
  const server = await boardServer(PORT, { from: addMinutes(evening, -15), colder: 4 });
  const { origin, push } = server;
  try {
    await server.start(evening);
    await nightByForecast(page, origin);
    const region = page.getByRole('region', { name: 'Board', exact: true });
    await page.getByRole('button', { name: 'Share this night' }).click();
    await region.getByRole('button', { name: 'Post it' }).click();
    const link = await region.getByRole('textbox', { name: 'Link for your racers' }).inputValue();
    expect(link).toMatch(/\/board#[\w-]+\.[\w-]{22}$/);
    await region.getByRole('link', { name: 'Who follows, what was told' }).click();
    await expect(page.getByText('Nothing yet: no next job has changed.')).toBeVisible(SLOW);

    const context = await newContext();
    const phone = await phoneWith(context, push.subscription('phone'));
    await phone.goto(link);
    await phone.getByRole('list').getByRole('link').first().click();
    await expect(phone.getByRole('region', { name: 'Next', exact: true })).toBeVisible();
    const jobBefore = await phone.getByRole('region', { name: 'Next', exact: true }).textContent();
    expect(await accessFaults(phone)).toEqual([]);
    await phone.getByRole('button', { name: 'Buzz me' }).click();
    await expect(phone.getByText('This phone buzzes for this machine.')).toBeVisible(SLOW);

    // 50 minutes on, in the second hour of the weather, another process finds what was posted.
    await server.stop();
    const later = addMinutes(evening, 50);
    await page.clock.setFixedTime(later);
    await phone.clock.setFixedTime(later);
    await server.start(later);
    await expect.poll(() => push.received.length, { timeout: 30_000 }).toBe(1);
    await phone.reload();
    const next = phone.getByRole('region', { name: 'Next', exact: true });
    await expect(next).not.toHaveText(jobBefore ?? '');
    const { message } = push.received[0]!;
    const lead = message.title.replace(/^.*?: /, '');
    await expect(next).toContainText(lead);

    await keepShown(context);
    await deliver(phone, origin, JSON.stringify(message));
    await expect.poll(async () => (await shown(context)).length).toBe(1);
    const [notification] = await shown(context);
    expect(notification).toMatchObject({
      title: message.title,
      body: message.body,
      actions: [{ action: 'done', title: 'Done: it is in' }],
    });
    await phone.goto(`${origin}/board`);
    await press(context, '');
    await expect(phone.getByRole('region', { name: 'Next', exact: true })).toContainText(lead);
    await press(context, 'done');
    await page.reload();
    const row = page.getByRole('region', { name: 'Machines' }).getByRole('listitem').first();
    await expect(row).toContainText(`${lead.replace(/^Put in /, '')} in.`);
    await expect(row).toContainText('Follows: 1 phone');
    // And the night it was posted from hears of it, once, with a way back.
    await expect(page.getByText(/^From the board: .* in\.$/)).toBeVisible();
    await page.reload();
    await expect(row).toContainText('in.');
    await expect(page.getByText(/From the board/)).toHaveCount(0);
    await page.getByRole('button', { name: '10 min later' }).click();
    // Told to the server, and heard of again at the next look, which is 15 s away at most.
    await expect(row).toContainText('10 min late', SLOW);
    await phone.reload();
    await expect(phone.getByText('10 min late')).toBeVisible();
    await expect(page.getByRole('region', { name: 'What was told' })).toContainText('1 of 1 phone');
    expect(await accessFaults(page)).toEqual([]);
    expect(push.received).toHaveLength(1);

    await page.getByRole('button', { name: 'Take it down' }).click();
    await expect(page.getByText('The board was taken down.')).toBeVisible();
    await phone.reload();
    await expect(phone.getByText('This board is gone')).toBeVisible();
    await page.goto(`${origin}/`);
    const inNow = page.getByRole('region', { name: 'In now', exact: true });
    await expect(inNow).toContainText(lead.replace(/^Put in /, ''));
  } finally {
    await server.end();
  }
});
