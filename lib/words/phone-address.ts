/** True where an address leads to the computer itself, so that no phone can follow it. */
export function isOwnMachine(hostname: string): boolean {
  return /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/.test(hostname);
}

const HTTP = 'Phones follow with the page open. To buzz in a pocket they need an https address.';

/** What phones can do at the address they are given. */
export const PHONE_WORDS = {
  http: HTTP,
  found: `This is the computer's address on its own network or hot spot: phones on it need no internet. ${HTTP}`,
  several: (others: readonly string[]): string =>
    `This computer is on more than one network. If phones cannot open this one, put ${others.join(' or ')} in its place. ${HTTP}`,
  ownMachine:
    'Phones cannot open this address: it means "this computer". Start Heavy Air with HOST=0.0.0.0 and join a network or switch on the hot spot; the link and the code then lead to the computer\'s address there.',
} as const;
