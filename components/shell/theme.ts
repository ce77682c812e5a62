import type { Preferences } from '@/lib/store/records';

/** A copy of the choice where a script can read it before the first paint; the record in the store is the original. */
const THEME_KEY = 'heavy-air-theme';

/**
 * Runs in the head, before anything is painted: a page meant for the night must not flash white.
 * Keep it a constant; the content security policy knows it by its hash.
 */
export const THEME_SCRIPT = `try{var t=JSON.parse(localStorage.getItem('${THEME_KEY}'));if(t){var e=document.documentElement;if(t.theme!=='auto')e.dataset.theme=t.theme;if(t.brightness<1){e.dataset.dim='';e.style.setProperty('--brightness',t.brightness)}}}catch(_){}`;

type Theme = Pick<Preferences, 'theme' | 'brightness'>;

/** Shows the chosen theme now. Brightness counts in the night theme only. */
export function applyTheme({ theme, brightness }: Theme): void {
  const root = document.documentElement;
  if (theme === 'auto') delete root.dataset.theme;
  else root.dataset.theme = theme;
  const dim = theme !== 'day' && brightness < 1;
  if (dim) {
    root.dataset.dim = '';
    root.style.setProperty('--brightness', String(brightness));
  } else {
    delete root.dataset.dim;
    root.style.removeProperty('--brightness');
  }
  rememberTheme({ theme, brightness: dim ? brightness : 1 });
}

function rememberTheme(theme: Theme): void {
  try {
    localStorage.setItem(THEME_KEY, JSON.stringify(theme));
  } catch {
    // Storage may be shut off; then only the flash before the first paint is not prevented.
  }
}
