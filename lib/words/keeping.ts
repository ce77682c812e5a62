import type { StoreHealth } from '@/lib/store/store-type';

/**
 * Whether what is entered stays, and what to do for it. Safari clears the data of a site that was not opened for seven
 * days of use, except that of the home screen (WebKit, "Full third-party cookie blocking and more", 2020).
 */
export function keepingSentence({ keeps, promised }: Pick<StoreHealth, 'keeps' | 'promised'>): string {
  if (keeps === 'memory') return 'What you enter now is gone after a reload. Save a backup file now.';
  if (promised === true)
    return 'This browser has promised to keep what you enter until you clear it. A lost phone keeps nothing: save a backup file now and then.';
  return 'This browser has not promised to keep what you enter and may clear it by itself, some after seven days without a visit. Save a backup file after each night.';
}

/** What the home screen is for; null where the browser has promised to keep the data anyway. */
export function homeScreenSentence({
  keeps,
  promised,
}: Pick<StoreHealth, 'keeps' | 'promised'>): string | null {
  if (keeps === 'memory' || promised === true) return null;
  return 'On the home screen (Share, then Add to Home Screen) Heavy Air is kept like an app. On an iPhone it starts empty there: save a backup file here first, then open it there.';
}
