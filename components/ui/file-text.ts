/** A character takes at most four bytes in UTF-8 (RFC 3629). */
const MOST_BYTES_EACH = 4;

/** The text of a file; of one that is too long, no more than its reader needs to see that. */
export function fileText(file: File, mostCharacters: number): Promise<string> {
  return file.slice(0, MOST_BYTES_EACH * (mostCharacters + 1)).text();
}
