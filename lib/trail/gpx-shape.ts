import { fail, ok, type Result } from '@/lib/result/result';

export type GpxShapeProblem =
  | { readonly code: 'gpx-too-large'; readonly mostBytes: number }
  | { readonly code: 'gpx-empty' }
  | { readonly code: 'gpx-has-doctype' }
  | { readonly code: 'gpx-too-deep' }
  | { readonly code: 'gpx-too-many-points'; readonly most: number }
  | { readonly code: 'gpx-not-xml' };

/** Larger files are refused unread. */
export const MOST_GPX_BYTES = 20 * 1024 * 1024;
/** Two days at one point a second. */
const MOST_GPX_POINTS = 200_000;
/** A track stands four elements deep, with a vendor's additions perhaps eight. */
const DEEPEST = 40;

const POINT = /^(?:[\w.-]+:)?(?:trkpt|rtept|wpt)[\s/>]/;

/**
 * Looks over XML text before any parser does, in one pass: no document type and so no entities of its own, no depth
 * that only an attack has, and no more points than can be worked on at once.
 */
export function checkGpxShape(text: string): Result<null, GpxShapeProblem> {
  // A UTF-16 unit is at least one byte of UTF-8.
  if (text.length > MOST_GPX_BYTES) return fail({ code: 'gpx-too-large', mostBytes: MOST_GPX_BYTES });
  if (text.trim() === '') return fail({ code: 'gpx-empty' });
  let [depth, points] = [0, 0];
  let at = text.indexOf('<');
  if (at === -1) return fail({ code: 'gpx-not-xml' });
  while (at !== -1) {
    const mark = text.slice(at + 1, at + 12);
    if (/^!(DOCTYPE|ENTITY)/i.test(mark)) return fail({ code: 'gpx-has-doctype' });
    const end = endOf(text, at, mark);
    if (end === -1) return fail({ code: 'gpx-not-xml' });
    if (mark.startsWith('/')) depth -= 1;
    else if (!mark.startsWith('!') && !mark.startsWith('?')) {
      if (POINT.test(mark)) points += 1;
      if (text[end - 1] !== '/') depth += 1;
    }
    if (depth > DEEPEST) return fail({ code: 'gpx-too-deep' });
    if (points > MOST_GPX_POINTS) return fail({ code: 'gpx-too-many-points', most: MOST_GPX_POINTS });
    at = text.indexOf('<', end);
  }
  return ok(null);
}

/** Where what starts at `at` closes: a comment, character data, an instruction or a tag. -1 where it never does. */
function endOf(text: string, at: number, mark: string): number {
  if (mark.startsWith('!--')) return text.indexOf('-->', at + 4);
  if (mark.startsWith('![CDATA[')) return text.indexOf(']]>', at);
  if (mark.startsWith('?')) return text.indexOf('?>', at);
  return text.indexOf('>', at);
}
