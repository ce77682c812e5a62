import { stableHash } from './stable-hash';

/** A piece of a payload that is too long for one code; all pieces of it carry its mark. */
export type LinkPart = {
  readonly mark: string;
  /** From 1. */
  readonly part: number;
  readonly of: number;
  readonly text: string;
};

/** Mark, place, how many, text: none of them holds a dot. */
const PART = /^p1\.([\w-]{1,40})\.(\d{1,3})\.(\d{1,3})\.([\w-]+)$/;

/** A payload in as few pieces as fit, all of about one length, so that no code is denser than the others. */
export function partsOf(payload: string, mostCharacters: number): readonly string[] {
  const of = Math.max(1, Math.ceil(payload.length / mostCharacters));
  const length = Math.ceil(payload.length / of);
  const mark = stableHash(payload);
  return Array.from(
    { length: of },
    (_, i) => `p1.${mark}.${i + 1}.${of}.${payload.slice(i * length, (i + 1) * length)}`,
  );
}

/** null where it is not exactly a piece. */
export function readLinkPart(payload: string): LinkPart | null {
  const [, mark, place, count, text] = PART.exec(payload) ?? [];
  if (mark === undefined || text === undefined) return null;
  const [part, of] = [Number(place), Number(count)];
  return part >= 1 && part <= of ? { mark, part, of, text } : null;
}

/** The payload of all its pieces in any order; null while one is missing, or where they are not of one payload. */
export function joinedParts(parts: readonly LinkPart[]): string | null {
  const [first] = parts;
  if (first === undefined) return null;
  const texts = Array.from(
    { length: first.of },
    (_, i) => parts.find(({ mark, part }) => mark === first.mark && part === i + 1)?.text,
  );
  const payload = texts.join('');
  return texts.includes(undefined) || stableHash(payload) !== first.mark ? null : payload;
}
