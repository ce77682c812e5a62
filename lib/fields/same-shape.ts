/**
 * Whether a value read back from the browser still has the shape of a draft, so that an old one is left aside and
 * not half understood. Entries of a list are compared with the template's first.
 */
export function sameShape<D>(template: D, value: unknown): value is D {
  if (Array.isArray(template)) {
    const [entry] = template;
    return Array.isArray(value) && value.every((item) => entry === undefined || sameShape(entry, item));
  }
  if (typeof template === 'object' && template !== null) {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
    const found = new Map(Object.entries(value));
    const wanted = Object.entries(template);
    return wanted.length === found.size && wanted.every(([key, part]) => sameShape(part, found.get(key)));
  }
  return typeof value === typeof template;
}
