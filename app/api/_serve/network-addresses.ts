import { networkInterfaces } from 'node:os';

type Listening = { readonly host: string; readonly port: number };

const OWN = /^(localhost|127\.\d{1,3}\.\d{1,3}\.\d{1,3}|\[?::1\]?)$/;
/** The network that `callerOfSocket` makes of ::1. */
const OWN_CALLER = /^(127\.\d{1,3}\.\d{1,3}\.\d{1,3}|0:0:0:0::\/64)$/;

/** True where the very computer that serves is the one that asks, by its own name for itself. */
export function asksItself({ caller, host }: { readonly caller: string; readonly host: string }): boolean {
  return OWN_CALLER.test(caller) && OWN.test(host.replace(/:\d+$/, ''));
}

/** Where others on the network find this server; none where it listens to its own computer alone. */
export function networkAddresses(
  { host, port }: Listening,
  networks = networkInterfaces(),
): readonly string[] {
  if (OWN.test(host)) return [];
  const all = host === '0.0.0.0' || host === '::';
  const found = Object.values(networks).flatMap((each = []) =>
    each.filter(({ family, internal }) => family === 'IPv4' && !internal).map(({ address }) => address),
  );
  const written = host.includes(':') ? `[${host}]` : host;
  return (all ? found : [written]).map((address) => `http://${address}:${port}`);
}
