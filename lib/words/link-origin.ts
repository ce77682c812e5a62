import type { OwnAddresses } from '@/lib/contract/own-addresses';

/** True where an address leads to the computer itself, so that no phone can follow it. */
export function isOwnMachine(hostname: string): boolean {
  return /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/.test(hostname);
}

/** What is said of the address a link goes out with. */
export const LINK_ORIGIN = {
  asking: 'Looking for the address of this computer on your network…',
  unknown:
    'Only this computer can open this link: the page is open as “this computer”, and no address on a network was found. Join a network or open a hot spot, then open this once more.',
  alone:
    'Only this computer can open this link: the server is heard by nobody else. Start it with HOST=0.0.0.0, and its address on your network is found here.',
  swapped:
    'The link leads to the address of this computer on your network, not to the one this page is open with.',
  http: 'It is plain http: a phone that opens it can read and plan. Its browser does not keep the page for use without a network, does not buzz, and does not copy with one press; only an https address can do that.',
} as const;

/** Why no address was found that others can open, in words. */
export function noOriginWords(found: OwnAddresses | null): string {
  return found !== null && !found.heardByOthers ? LINK_ORIGIN.alone : LINK_ORIGIN.unknown;
}
