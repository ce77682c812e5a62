/** A household or a phone has a whole network of this many bits under IPv6 (RFC 6177), so one caller could be any address in it. */
const GROUPS_OF_A_NETWORK = 4;

/** Who a socket belongs to: its address, or its network where one caller has a whole one. */
export function callerOfSocket(address: string | undefined): string {
  if (address === undefined) return 'unknown';
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1];
  if (mapped !== undefined) return mapped;
  return address.includes(':') ? networkOf(address) : address;
}

function networkOf(address: string): string {
  const [plain = ''] = address.split('%');
  const [head = '', tail] = plain.split('::');
  const before = head === '' ? [] : head.split(':');
  const after = tail === undefined || tail === '' ? [] : tail.split(':');
  const zeros = tail === undefined ? 0 : 8 - before.length - after.length;
  const groups = [...before, ...Array.from({ length: Math.max(0, zeros) }, () => '0'), ...after];
  return `${groups.slice(0, GROUPS_OF_A_NETWORK).join(':')}::/64`;
}
