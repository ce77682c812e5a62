import type { NetworkInterfaceInfo } from 'node:os';
import type { OwnAddresses } from '@/lib/contract/own-addresses';

type Interfaces = Readonly<Record<string, readonly NetworkInterfaceInfo[] | undefined>>;

/** Networks that are nobody's on the internet (RFC 1918), in the order in which a hot spot or a router uses them. */
const PRIVATE = [/^192\.168\./, /^10\./, /^172\.(1[6-9]|2\d|3[01])\./] as const;
/** RFC 1122 3.2.1.3 and RFC 4291 2.5.3, as a network of callers (`caller-address.ts`); RFC 3927; RFC 4193; RFC 4291 2.5.6. */
const NEAR = [/^127\./, /^(0:0:0:0|)::\/64$/, /^169\.254\./, /^f[cd]/i, /^fe[89ab]/i, ...PRIVATE] as const;

/** Whether somebody asks from this computer or a network that is not the internet. */
export function isNear(caller: string): boolean {
  return NEAR.some((network) => network.test(caller));
}

/** Whether a page was opened by a name that only this computer or its network has; a foreign name may be a trick of its owner. */
export function isNearHost(host: string): boolean {
  const name = host.replace(/:\d+$/, '');
  if (name === 'localhost' || name === '[::1]') return true;
  // An address, not a name that begins like one.
  if (!/^\d{1,3}(\.\d{1,3}){3}$/.test(name)) return false;
  return name.startsWith('127.') || PRIVATE.some((network) => network.test(name));
}

/** Where this server is found by others, by the addresses that its computer has now. */
export function ownAddresses(
  interfaces: Interfaces,
  { host, port }: { readonly host: string; readonly port: number },
): OwnAddresses {
  const all = Object.values(interfaces)
    .flatMap((each) => each ?? [])
    .filter(({ family, internal }) => family === 'IPv4' && !internal)
    .map(({ address }) => address)
    .filter((address) => host === '0.0.0.0' || host === '::' || host === address);
  const order = (address: string) => PRIVATE.findIndex((network) => network.test(address));
  const origins = [...new Set(all)]
    .filter((address) => order(address) >= 0)
    .sort((a, b) => order(a) - order(b))
    .map((address) => `http://${address}${port === 80 ? '' : `:${port}`}`);
  return { origins, heardByOthers: !/^(127\.|localhost$|::1$)/.test(host) };
}
