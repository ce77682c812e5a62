import { expect } from '@playwright/test';
import { type Engine, test } from './engine';
import { does, press, shows, textOf, type } from './in-page';

const VISITS = 20;

/** The call as it stands, once the picture under it stands too: the first mains named, and the unit of the air. */
async function callOf(engine: Engine): Promise<string> {
  const text = await textOf(engine, '/');
  const unit = /°[FC](?=, ideal)/.exec(text)?.[0];
  const [fitted, next] = text.match(/\b\d{3} \d{3} \d{3}\b/g) ?? [];
  return unit === undefined ? '' : `${fitted}, ${next}, ${unit}`;
}

/** The air of the machine's baseline as the list of machines tells it. */
async function baselineOf(engine: Engine): Promise<string> {
  return /proven at \S+ °[FC]/.exec(await textOf(engine, '/machines'))?.[0] ?? '';
}

/** Until a whole call stands on the screen that is not the one from before. */
async function nextCall(engine: Engine, before: string): Promise<string> {
  await expect
    .poll(async () => [before, ''].includes(await callOf(engine)), { intervals: [100] })
    .toBe(false);
  return callOf(engine);
}

/** A form has an address of its own, which one engine takes for a step of the way back and another does not. */
async function backToNight(engine: Engine): Promise<void> {
  await engine.back();
  await new Promise((resolve) => setTimeout(resolve, 500));
  const stays = await engine.ask(() => location.pathname === '/machines').catch(() => false);
  if (stays) await engine.back();
}

test('after Back the call is the one a reload shows, also in its units', async ({ engine, engineName }) => {
  await engine.go('/');
  let call = await nextCall(engine, '');
  let kept = 0;
  for (let visit = 0; visit < VISITS; visit += 1) {
    await engine.ask(() => {
      Object.assign(window, { isTheSamePage: true });
    });
    await engine.go('/machines');
    await shows(engine, 'Duplicate', '/machines');
    const air = await baselineOf(engine);
    if (visit % 2 === 0) {
      await does(engine, press, 'Display');
      await does(engine, press, visit % 4 === 0 ? '°C' : '°F');
    } else {
      await does(engine, press, 'Edit');
      await does(engine, type, 'Temperature', visit % 4 === 1 ? '60 F' : '13 F');
      await does(engine, press, 'Save machine');
    }
    await expect.poll(async () => ['', air].includes(await baselineOf(engine))).toBe(false);
    await backToNight(engine);
    const after = await nextCall(engine, call);
    kept += Number(await engine.ask(() => 'isTheSamePage' in window));
    await engine.go('/');
    await expect.poll(() => callOf(engine), { intervals: [100] }).toBe(after);
    call = after;
  }
  // Otherwise this test has not met what it is about. Firefox loads this page anew, which is as good.
  if (engineName === 'webkit') expect(kept).toBeGreaterThan(VISITS / 2);
});
