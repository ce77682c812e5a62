import { clientOf } from './client-of';
import { trustedProxies } from './rate-limit';

/** Who asks, for all that is counted or shared by caller. */
export function callerOf(request: Request): string {
  return clientOf(request.headers, trustedProxies(process.env));
}
