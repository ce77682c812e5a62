/** How the program names itself to services that want to know whom to write to. */
export function userAgent(contact: string | null): string {
  return contact === null ? 'heavy-air/0.1' : `heavy-air/0.1 ${contact}`;
}
