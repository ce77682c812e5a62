/** Push services of the browsers there are, from memory of their makers' documents. A leading dot: every name below it. */
const SERVICES = [
  'fcm.googleapis.com',
  'updates.push.services.mozilla.com',
  'web.push.apple.com',
  '.push.apple.com',
  '.notify.windows.com',
] as const;

type Environment = Readonly<Record<string, string | undefined>>;

/** Origins that `PUSH_SERVICES` adds, with commas between; what is no origin is left out. */
export function ownServices(environment: Environment): readonly string[] {
  return (environment.PUSH_SERVICES ?? '')
    .split(',')
    .map((text) => text.trim())
    .flatMap((text) => (URL.canParse(text) && /^https?:/.test(text) ? [new URL(text).origin] : []));
}

/** How an address may be spoken to: `open` only where its name leads outside, `own` wherever it leads; null: not at all. */
export function serviceOf(endpoint: string, own: readonly string[]): 'open' | 'own' | null {
  if (!URL.canParse(endpoint)) return null;
  const { origin, protocol, hostname, port, username, password } = new URL(endpoint);
  if (username !== '' || password !== '') return null;
  if (own.includes(origin)) return 'own';
  if (protocol !== 'https:' || port !== '') return null;
  const listed = SERVICES.some((name) =>
    name.startsWith('.') ? hostname.endsWith(name) : hostname === name,
  );
  return listed ? 'open' : null;
}
