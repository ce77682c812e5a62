/** A weight above 0, a fraction of three digits at most (RFC 9110, section 12.4.2). */
const WEIGHT = /^[ \t]*q=(0(?:\.\d{0,3})?|1(?:\.0{0,3})?)$/i;

/** Whether a coding is asked for by its name with a weight above 0 (RFC 9110, section 12.5.3). */
export function wantsCoding(acceptEncoding: string | undefined, coding: 'br' | 'gzip'): boolean {
  return (acceptEncoding ?? '').split(',').some((part) => {
    const [name = '', ...parameters] = part.trim().split(';');
    if (name.trimEnd().toLowerCase() !== coding || parameters.length > 1) return false;
    const [weight] = parameters;
    return weight === undefined || Number(WEIGHT.exec(weight)?.[1] ?? 0) > 0;
  });
}
