import { lookup } from 'node:dns';
import { BlockList, isIPv6, type LookupFunction } from 'node:net';

/** Networks that are not the open internet (RFC 6890 and its registries, from memory). */
const INSIDE = [
  ['0.0.0.0', 8],
  ['10.0.0.0', 8],
  ['100.64.0.0', 10],
  ['127.0.0.0', 8],
  ['169.254.0.0', 16],
  ['172.16.0.0', 12],
  ['192.0.0.0', 24],
  ['192.0.2.0', 24],
  ['192.168.0.0', 16],
  ['198.18.0.0', 15],
  ['198.51.100.0', 24],
  ['203.0.113.0', 24],
  ['224.0.0.0', 4],
  ['240.0.0.0', 4],
] as const;

/** The open internet of version 6 is all in 2000::/3; of it, what carries addresses of version 4 inside is left out. */
const OPEN_6 = ['2000::', 3] as const;
const INSIDE_6 = [
  ['2001::', 32],
  ['2001:db8::', 32],
  ['2002::', 16],
] as const;

function blockList(): { readonly inside: BlockList; readonly open: BlockList } {
  const [inside, open] = [new BlockList(), new BlockList()];
  for (const [net, bits] of INSIDE) inside.addSubnet(net, bits, 'ipv4');
  for (const [net, bits] of INSIDE_6) inside.addSubnet(net, bits, 'ipv6');
  open.addSubnet(...OPEN_6, 'ipv6');
  return { inside, open };
}

const LISTS = blockList();

/** True where an address of the internet protocol lies on the open internet. */
export function isOpenAddress(address: string): boolean {
  if (!isIPv6(address)) return !LISTS.inside.check(address, 'ipv4');
  return LISTS.open.check(address, 'ipv6') && !LISTS.inside.check(address, 'ipv6');
}

/** Looks a name up for a connection and fails where any of its addresses lies inside; the connection then uses no other. */
export function openLookup(resolve: typeof lookup = lookup): LookupFunction {
  return (name, options, done) => {
    resolve(name, { ...options, all: true }, (error, found) => {
      const inside = error === null && !found.every(({ address }) => isOpenAddress(address));
      const [first] = found ?? [];
      if (error !== null) done(error, '', 0);
      else if (inside || first === undefined) done(new Error(`${name} does not lead outside`), '', 0);
      else if (options.all === true) done(null, found);
      else done(null, first.address, first.family);
    });
  };
}
