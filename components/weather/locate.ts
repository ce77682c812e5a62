import { fail, ok, type Result } from '@/lib/result/result';

export type LocateProblem = 'insecure' | 'unsupported' | 'denied' | 'unavailable' | 'timeout';
export type Location = { readonly latitude: number; readonly longitude: number };

const PATIENCE_MS = 10_000;
/** A fix of some minutes ago is as good: a track does not move. */
const OLDEST_MS = 300_000;

/** Where the device is; asks the person once. */
export function locate(): Promise<Result<Location, LocateProblem>> {
  if (!window.isSecureContext) return Promise.resolve(fail('insecure'));
  if (!('geolocation' in navigator)) return Promise.resolve(fail('unsupported'));
  return new Promise((resolve) => {
    navigator.geolocation.getCurrentPosition(
      ({ coords: { latitude, longitude } }) => resolve(ok({ latitude, longitude })),
      ({ code }) => resolve(fail(code === 1 ? 'denied' : code === 3 ? 'timeout' : 'unavailable')),
      { enableHighAccuracy: true, timeout: PATIENCE_MS, maximumAge: OLDEST_MS },
    );
  });
}

const WORDS: Readonly<Record<LocateProblem, string>> = {
  insecure:
    'A browser tells the location only to pages opened over https. Search for the place, or type its coordinates.',
  unsupported: 'This browser cannot tell the location. Search for the place, or type its coordinates.',
  denied:
    'The location was not allowed. Allow it for this site in the browser’s settings, search for the place, or type its coordinates.',
  unavailable:
    'The device does not know where it is. Try again under open sky, search for the place, or type its coordinates.',
  timeout:
    'The device took too long to find where it is. Try again under open sky, search for the place, or type its coordinates.',
};

/** Why the location is not known, and what to do. */
export function locateProblemWords(problem: LocateProblem): string {
  return WORDS[problem];
}
