/** Where no proxy is trusted all callers share one bucket: a header that anybody can write widens nothing. */
export const EVERYONE = 'everyone';

/**
 * Who is asking, by the address that the outermost trusted proxy saw. Each proxy adds the address it saw at the right
 * end of `x-forwarded-for`; whatever stands left of the trusted ones was written by the caller and is ignored.
 */
export function clientOf(headers: Headers, trustedProxies: number): string {
  if (trustedProxies < 1) return EVERYONE;
  const addresses = (headers.get('x-forwarded-for') ?? '').split(',').map((address) => address.trim());
  return addresses.at(-trustedProxies)?.slice(0, 64) || EVERYONE;
}
