import { CALLER_HEADER, servedProcess } from '@/app/api/_serve/served-process';

/** Where nobody knows who asks all callers share one bucket: a header that anybody can write widens nothing. */
export const EVERYONE = 'everyone';

/**
 * Who is asking, by the address that the outermost trusted proxy saw. Each proxy adds the address it saw at the right
 * end of `x-forwarded-for`; whatever stands left of the trusted ones was written by the caller and is ignored. Where no
 * proxy is trusted it is the address the server itself saw.
 */
export function clientOf(headers: Headers, trustedProxies: number): string {
  if (trustedProxies < 1) return addressSeen(headers);
  const addresses = (headers.get('x-forwarded-for') ?? '').split(',').map((address) => address.trim());
  return addresses.at(-trustedProxies)?.slice(0, 64) || EVERYONE;
}

/** Without a server of ours, which throws away what a caller wrote there, the header is anybody's word. */
function addressSeen(headers: Headers): string {
  return (servedProcess() === null ? null : headers.get(CALLER_HEADER)) ?? EVERYONE;
}
