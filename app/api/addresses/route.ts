import { handle, onlyAllows } from '@/app/api/_http/handle';
import { asksItself, networkAddresses } from '@/app/api/_serve/network-addresses';
import { CALLER_HEADER, servedProcess } from '@/app/api/_serve/served-process';
import { readServeSettings } from '@/app/api/_serve/settings';
import { fail, ok } from '@/lib/result/result';

/** Where phones on the network find this server: told to the computer it runs on, and to nobody else. */
export function GET(request: Request): Promise<Response> {
  return handle(request, async () => {
    const settings = readServeSettings(process.env);
    const caller = servedProcess() === null ? '' : (request.headers.get(CALLER_HEADER) ?? '');
    const host = request.headers.get('host') ?? '';
    if (settings.proxies > 0 || !asksItself({ caller, host }))
      return fail({ status: 403, detail: 'Only the computer that serves is told its addresses.' });
    return ok({ addresses: networkAddresses(settings) });
  });
}

const notAllowed = onlyAllows('GET');

export {
  notAllowed as DELETE,
  notAllowed as OPTIONS,
  notAllowed as PATCH,
  notAllowed as POST,
  notAllowed as PUT,
};
