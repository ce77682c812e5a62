import type { Page } from '@playwright/test';

const GROUND = {
  name: '',
  region: '',
  latitude: 47.42,
  longitude: -93.61,
  elevationM: 372,
  timezone: null,
};
const CREDIT = { attribution: 'Places: GeoNames', attributionUrl: 'https://www.geonames.org/' };

/** Our own place address, answered: the ground at any point, and these places by any name. */
export async function answerPlaces(page: Page, places: readonly object[] = []): Promise<void> {
  await page.route('**/api/places?**', (route) => {
    const byPoint = new URL(route.request().url()).searchParams.has('lat');
    return route.fulfill(jsonAnswer({ places: byPoint ? [GROUND] : places, ...CREDIT }));
  });
}

export function jsonAnswer(body: unknown): {
  readonly contentType: string;
  readonly body: string;
} {
  return { contentType: 'application/json', body: JSON.stringify(body) };
}
