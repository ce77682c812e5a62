/** The text with a minus put in front, or the minus (hyphen or true minus) taken away. */
export function flipSign(text: string): string {
  const trimmed = text.trimStart();
  if (/^[-−–]/.test(trimmed)) return trimmed.slice(1).trimStart();
  if (trimmed.startsWith('+')) return `-${trimmed.slice(1).trimStart()}`;
  return `-${trimmed}`;
}
