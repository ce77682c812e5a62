import { VERSION } from '@/lib/contract/version';

/** How the program names itself to services that want to know whom to write to. */
export function userAgent(contact: string | null): string {
  const name = `heavy-air/${VERSION}`;
  return contact === null ? name : `${name} ${contact}`;
}
