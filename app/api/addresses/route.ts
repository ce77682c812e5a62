import { networkInterfaces } from 'node:os';
import { callerOf } from '@/app/api/_http/caller-of';
import { handle, refusedBut } from '@/app/api/_http/handle';
import { readServeSettings } from '@/app/api/_serve/settings';
import { fail, ok } from '@/lib/result/result';
import { isNear, isNearHost, ownAddresses } from './own-addresses';

/** Where phones on the same network find this server: told to them and to this computer, and to nobody from outside. */
export function GET(request: Request): Promise<Response> {
  return handle(request, async () => {
    const settings = readServeSettings(process.env);
    const near = isNear(callerOf(request)) && isNearHost(request.headers.get('host') ?? '');
    if (!near || settings.proxies > 0)
      return fail({ status: 404, detail: 'This is told only to whoever asks from the same network.' });
    return ok(ownAddresses(networkInterfaces(), settings));
  });
}

export const { DELETE, OPTIONS, PATCH, POST, PUT } = refusedBut('GET');
