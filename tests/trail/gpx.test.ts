// @vitest-environment jsdom
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { expectOk } from '@/lib/result/result';
import { isoUtc } from '@/lib/time/zone';
import { readGpx, type XmlParser } from '@/lib/trail/gpx';
import { checkGpxShape, MOST_GPX_BYTES } from '@/lib/trail/gpx-shape';
import { profileOf } from '@/lib/trail/track';

const parse: XmlParser = (text) => new DOMParser().parseFromString(text, 'application/xml');
const neverParse: XmlParser = () => {
  throw new Error('the parser must not see this');
};
const fixture = (name: string) =>
  readFileSync(join(import.meta.dirname, `../fixtures/gpx/${name}.gpx`), 'utf8');
const trackOf = (name: string) => expectOk(readGpx(fixture(name), parse)).tracks[0]!;
const gpxAround = (inside: string) => `<gpx version="1.1" creator="invented">${inside}</gpx>`;
const POINTS = '<trkpt lat="47" lon="-93"/><trkpt lat="47.1" lon="-93"/>';

describe('a GPX track', () => {
  it('gives its points with heights and times', () => {
    const { name, segments, route } = trackOf('valley-pass');
    expect({ name, route, pieces: segments.length }).toEqual({
      name: 'Valley to pass',
      route: false,
      pieces: 1,
    });
    const points = segments[0]!.map(({ latitude, elevation, at }) => [latitude, elevation, isoUtc(at!)]);
    expect(points).toEqual([
      [47.4, 320, '2027-01-16T14:00:00Z'],
      [47.45, 640, '2027-01-16T14:20:00Z'],
      [47.5, 1450, '2027-01-16T15:00:00Z'],
      [47.5, 1449, '2027-01-16T15:30:00Z'],
      [47.55, 900, '2027-01-16T16:10:00Z'],
    ]);
  });

  it('may have no times, or no heights', () => {
    expect(trackOf('no-times').segments[0]!.map(({ at }) => at)).toEqual([null, null, null]);
    expect(trackOf('no-elevation').segments[0]!.map(({ elevation }) => elevation)).toEqual([
      null,
      null,
      null,
    ]);
  });

  it('may come in pieces: one point is no piece, a point without a time is left out and counted', () => {
    const { tracks, untimed } = expectOk(readGpx(fixture('segments'), parse));
    expect(tracks[0]!.segments.map((points) => points.length)).toEqual([3, 3]);
    expect(untimed).toBe(1);
    expect(profileOf(tracks[0]!)).toMatchObject({
      segments: 2,
      backwards: 1,
      elevations: 'some',
      timed: true,
    });
  });

  it('crosses midnight and a zone in order, and takes a time without a mark as UTC', () => {
    // GPX 1.1 schema: "Date and time in are in Univeral Coordinated Time (UTC), not local time!"
    expect(trackOf('midnight-and-zone').segments[0]!.map(({ at }) => isoUtc(at!))).toEqual([
      '2027-01-01T04:30:00Z',
      '2027-01-01T05:30:00.500Z',
      '2027-01-01T06:15:00Z',
      '2027-01-01T07:00:00Z',
    ]);
  });

  it('is a route where there is no recording', () => {
    expect(trackOf('route')).toMatchObject({ name: 'Planned loop', route: true });
  });

  it('loses all its times where most points have none', () => {
    const text = gpxAround(
      `<trk><trkseg>${POINTS}<trkpt lat="47.2" lon="-93"><time>2027-01-16T14:00:00Z</time></trkpt></trkseg></trk>`,
    );
    const { tracks, untimed } = expectOk(readGpx(text, parse));
    expect(tracks[0]!.segments[0]!.map(({ at }) => at)).toEqual([null, null, null]);
    expect(untimed).toBe(0);
  });

  it('has no height from a number that no trail has, and no point off the earth', () => {
    const text = gpxAround(
      `<trk><trkseg><trkpt lat="47" lon="-93"><ele>-9999</ele></trkpt>${POINTS}<trkpt lat="99" lon="-93"/></trkseg></trk>`,
    );
    const points = expectOk(readGpx(text, parse)).tracks[0]!.segments[0]!;
    expect(points.map(({ elevation }) => elevation)).toEqual([null, null, null]);
  });

  it('may begin with a byte order mark and hold vendors’ additions, which are ignored', () => {
    const extra = '<extensions xmlns:v="urn:v"><v:heart>90</v:heart></extensions>';
    const text = `\ufeff<?xml version="1.0"?>${gpxAround(`<trk><trkseg>${POINTS.replaceAll('/>', `>${extra}</trkpt>`)}</trkseg></trk>`)}`;
    expect(expectOk(readGpx(text, parse)).tracks[0]!.segments[0]).toHaveLength(2);
  });
});

describe('a file that is no track', () => {
  it('with a document type is refused before a parser sees it, entities and all', () => {
    expect(readGpx(fixture('entity-bomb'), neverParse)).toEqual({
      ok: false,
      reason: { code: 'gpx-has-doctype' },
    });
    expect(readGpx('<!doctype html><html></html>', neverParse)).toMatchObject({
      reason: { code: 'gpx-has-doctype' },
    });
  });

  it('is not refused for the word in a comment or in character data', () => {
    const text = gpxAround(
      `<!-- <!DOCTYPE x> --><trk><name><![CDATA[<!ENTITY a>]]></name><trkseg>${POINTS}</trkseg></trk>`,
    );
    expect(readGpx(text, parse).ok).toBe(true);
  });

  it('is malformed, cut off, or no XML at all', () => {
    for (const text of [
      fixture('malformed'),
      fixture('valley-pass').slice(0, 500),
      'a,b,c\n1,2,3',
      '<gpx',
      '<gpx><!-- ',
    ])
      expect(readGpx(text, parse)).toEqual({ ok: false, reason: { code: 'gpx-not-xml' } });
  });

  it('is empty, another kind of XML, or without a way', () => {
    expect(readGpx('  \n', neverParse)).toEqual({ ok: false, reason: { code: 'gpx-empty' } });
    expect(readGpx('<kml><Placemark/></kml>', parse)).toEqual({
      ok: false,
      reason: { code: 'not-gpx', root: 'kml' },
    });
    const lone = gpxAround(
      '<wpt lat="47" lon="-93"/><trk><trkseg><trkpt lat="47" lon="-93"/></trkseg></trk>',
    );
    expect(readGpx(lone, parse)).toEqual({ ok: false, reason: { code: 'gpx-without-track' } });
  });

  it('is larger than 20 MB, deeper than any track, or has more points than two days of seconds', () => {
    const large = ' '.repeat(MOST_GPX_BYTES + 1);
    expect(readGpx(large, neverParse)).toEqual({
      ok: false,
      reason: { code: 'gpx-too-large', mostBytes: 20 * 1024 * 1024 },
    });
    expect(readGpx('<a>'.repeat(2000), neverParse)).toEqual({ ok: false, reason: { code: 'gpx-too-deep' } });
    const many = gpxAround('<trkpt lat="1" lon="1"/>'.repeat(200_001));
    expect(readGpx(many, neverParse)).toEqual({
      ok: false,
      reason: { code: 'gpx-too-many-points', most: 200_000 },
    });
  });

  it('with an unclosed mark at every byte is looked over once, not once for each', () => {
    for (const mark of ['<!--', '<![CDATA[', '<?', '<'])
      expect(checkGpxShape(mark.repeat(1_000_000))).toMatchObject({ ok: false });
  });

  it('hides nothing in a thousand namespaces', () => {
    const spaces = Array.from({ length: 1000 }, (_, i) => `xmlns:n${i}="urn:${i}"`).join(' ');
    expect(readGpx(`<gpx ${spaces}><trk><trkseg>${POINTS}</trkseg></trk></gpx>`, parse)).toMatchObject({
      ok: false,
      reason: { code: 'not-gpx' },
    });
  });
});
