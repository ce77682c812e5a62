import { expect } from '@playwright/test';
import { NIGHT_STATES } from './night-states';
import { openState } from './open-state';
import { test } from './watched-page';
import { answerPlaces, jsonAnswer } from './weather-answers';

test.use({ timezoneId: 'America/Chicago', now: '19:40' });

test('where a forecast is followed and none came, the first screen says why, once, and what to do instead', async ({
  night,
}) => {
  await answerPlaces(night);
  await night.route('**/api/forecast?**', (route) =>
    route.fulfill(jsonAnswer({ type: 'about:blank', status: 503, detail: 'No weather service answered.' })),
  );
  await openState(night, NIGHT_STATES.find(({ name }) => name === 'no-hours')!);
  const main = night.getByRole('main');
  await expect(main.getByRole('link', { name: 'Get the forecast' })).toHaveCount(1);
  await main.getByRole('link', { name: 'Get the forecast' }).click();
  await night.getByRole('button', { name: 'Get the forecast' }).click();
  await expect(night.getByRole('dialog')).toBeHidden();
  for (const there of [
    main.getByText('No forecast came: bad answer.'),
    main.getByRole('link', { name: 'Type hours by hand' }),
    main.getByRole('button', { name: 'Ask again now' }),
  ]) {
    await expect(there).toHaveCount(1);
    await expect(there).toBeInViewport({ ratio: 1 });
  }
  // It has been asked for already, none is there to go by, and both were said before.
  await expect(main.getByRole('link', { name: 'Get the forecast' })).toHaveCount(0);
  await expect(main.getByText('No forecast has come yet')).toHaveCount(0);
  await expect(main.getByText('last forecast')).toHaveCount(0);
});
