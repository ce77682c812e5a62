import { gpx } from '@tmcw/togeojson';
import { fail, ok, type Result } from '@/lib/result/result';
import { type Instant, instant } from '@/lib/time/instant';
import { type Metre, metre } from '@/lib/units/quantity';
import { checkGpxShape, type GpxShapeProblem } from './gpx-shape';
import type { GpxTrack, TrackPoint } from './track';

/** The browser's XML parser, or a stand-in for it; a `parsererror` element or a throw says that it is no XML. */
export type XmlParser = (text: string) => Document;

export type GpxProblem =
  | GpxShapeProblem
  | { readonly code: 'not-gpx'; readonly root: string }
  | { readonly code: 'gpx-without-track' };

export type GpxTracks = {
  readonly tracks: readonly GpxTrack[];
  /** Points left out because their neighbours have a time and they have none. */
  readonly untimed: number;
};

/** More attributes on the root than this are no namespaces of a recorder. */
const MOST_ROOT_ATTRIBUTES = 40;

/** The tracks of a GPX 1.0 or 1.1 text; its routes where it has no track. */
export function readGpx(text: string, parse: XmlParser): Result<GpxTracks, GpxProblem> {
  const plain = text.replace(/^\ufeff/, '');
  const shape = checkGpxShape(plain);
  if (!shape.ok) return shape;
  const document = parsed(plain, parse);
  if (document === null) return fail({ code: 'gpx-not-xml' });
  const root = document.documentElement;
  if (root.localName !== 'gpx' || root.attributes.length > MOST_ROOT_ATTRIBUTES)
    return fail({ code: 'not-gpx', root: root.localName.slice(0, 40) });
  withoutExtras(document);
  const untimed = withoutUntimed(document);
  const converted: Converted = gpx(document);
  const lines = converted.features.flatMap(trackOf);
  const recorded = lines.filter(({ route }) => !route);
  const tracks = recorded.length > 0 ? recorded : lines;
  return tracks.length === 0 ? fail({ code: 'gpx-without-track' }) : ok({ tracks, untimed });
}

function parsed(text: string, parse: XmlParser): Document | null {
  try {
    const document = parse(text);
    const broken =
      document.documentElement === null || document.getElementsByTagName('parsererror').length > 0;
    return broken ? null : document;
  } catch {
    return null;
  }
}

/** Vendors' additions hold nothing that is used here, and a hostile file could hide a mountain in them. */
function withoutExtras(document: Document): void {
  for (const name of ['extensions', 'link', 'wpt'])
    for (const element of Array.from(document.getElementsByTagName(name))) element.remove();
}

/**
 * Takes out the points without a time where most points have one: the converter lists times apart from points, so a
 * missing one would shift all that follow. Where most lack a time, times are taken out instead. Says how many points
 * went.
 */
function withoutUntimed(document: Document): number {
  const points = Array.from(document.getElementsByTagName('trkpt'));
  const timeOf = (point: Element) =>
    Array.from(point.children).find(
      ({ localName, textContent }) => localName === 'time' && instantOf(textContent) !== null,
    );
  const untimed = points.filter((point) => timeOf(point) === undefined);
  if (untimed.length === 0) return 0;
  if (untimed.length * 2 > points.length) {
    for (const time of points.flatMap((point) => Array.from(point.getElementsByTagName('time'))))
      time.remove();
    return 0;
  }
  for (const point of untimed) point.remove();
  return untimed.length;
}

/** What the converter gives, as far as it is used here; its own types lean on a package that is not installed. */
type Converted = { readonly features: readonly Feature[] };
type Feature = {
  readonly geometry:
    | { readonly type: 'LineString'; readonly coordinates: readonly Coordinate[] }
    | { readonly type: 'MultiLineString'; readonly coordinates: readonly (readonly Coordinate[])[] }
    | { readonly type: 'Point' }
    | null;
  readonly properties: {
    readonly name?: unknown;
    readonly _gpxType?: unknown;
    readonly coordinateProperties?: { readonly times?: unknown };
  } | null;
};
/** Longitude, latitude, and height where there is one. */
type Coordinate = readonly (number | undefined)[];

function trackOf({ geometry, properties }: Feature): readonly GpxTrack[] {
  if (geometry === null || geometry.type === 'Point') return [];
  const several = geometry.type === 'MultiLineString';
  const lines = several ? geometry.coordinates : [geometry.coordinates];
  const times = timesOf(properties, several);
  const segments = lines
    .map((line, i) => pointsOf(line, times[i] ?? []))
    .filter((points) => points.length > 1);
  const name = typeof properties?.name === 'string' ? properties.name.trim().slice(0, 80) : '';
  return segments.length === 0 ? [] : [{ name, segments, route: properties?._gpxType === 'rte' }];
}

/** Times by segment, as the converter lists them: one list for one segment, a list of lists for several. */
function timesOf(properties: Feature['properties'], several: boolean): readonly (readonly unknown[])[] {
  const listed: unknown = properties?.coordinateProperties?.times;
  if (!Array.isArray(listed)) return [];
  return several ? listed.filter(Array.isArray) : [listed];
}

function pointsOf(line: readonly Coordinate[], times: readonly unknown[]): readonly TrackPoint[] {
  const timed = times.length === line.length;
  return line.flatMap(([longitude, latitude, elevation], i) => {
    if (!isWithin(latitude, 90) || !isWithin(longitude, 180)) return [];
    return [{ latitude, longitude, elevation: heightOf(elevation), at: timed ? instantOf(times[i]) : null }];
  });
}

function isWithin(value: number | undefined, most: number): value is number {
  return value !== undefined && Math.abs(value) <= most;
}

/** Recorders write wild heights where they lost the sky; below the Dead Sea and above any pass they are no heights. */
function heightOf(value: number | undefined): Metre | null {
  return value !== undefined && value >= -430 && value <= 6000 ? metre(value) : null;
}

const TIME = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})?$/;

/** GPX times are UTC; one without a mark is taken so, as the standard says (GPX 1.1 schema, element time). */
function instantOf(value: unknown): Instant | null {
  if (typeof value !== 'string') return null;
  const marked = TIME.exec(value.trim());
  if (marked === null) return null;
  const at = Date.parse(marked[3] === undefined ? `${marked[0]}Z` : marked[0]);
  return Number.isNaN(at) ? null : instant(at);
}
