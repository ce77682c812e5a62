import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { HourSeries } from '@/lib/hours/series';
import { HOUR_MS, instant } from '@/lib/time/instant';
import { celsiusToKelvin } from '@/lib/units/convert';
import { metre, pascal, ratio } from '@/lib/units/quantity';
import { DUSK, hour } from '@/tests/support/plan-cases';

const FIXTURES = join(import.meta.dirname, '..', 'fixtures');

/** Where the nights of a file begin, counted in its rows, and how many hours each has. */
type RealFile = {
  readonly name: string;
  readonly elevation: number;
  readonly nights: readonly { readonly from: number; readonly hours: number }[];
};

/** As many nights one after another, each of as many hours. */
const evenly = (nights: number, hours: number): RealFile['nights'] =>
  Array.from({ length: nights }, (_, i) => ({ from: hours * i, hours }));

const FILES: readonly RealFile[] = [
  // 00:00 UTC is 17:00 in Alamosa.
  {
    name: 'reference/hours-alamosa-co-2317m-surfrad-20160101.csv',
    elevation: 2317,
    nights: [{ from: 0, hours: 16 }],
  },
  { name: 'hindcast/hours-two-harbors-mn-328m-tmy3-jan.csv', elevation: 328, nights: evenly(6, 16) },
  // The day ends at midnight: from noon on.
  {
    name: 'reference/hours-anchorage-ak-42m-tmy3-jan02.csv',
    elevation: 42,
    nights: [{ from: 11, hours: 13 }],
  },
  { name: 'hindcast/hours-chicago-il-201m-tmy3-jan.csv', elevation: 201, nights: evenly(30, 11) },
  { name: 'hindcast/hours-boulder-co-1689m-tmy3-jan-feb.csv', elevation: 1689, nights: evenly(30, 11) },
];

function nightsOf({ name, elevation, nights }: RealFile): readonly HourSeries[] {
  const [head = '', ...lines] = readFileSync(join(FIXTURES, name), 'utf8').trim().split('\n');
  const column = (title: string) => head.split(',').indexOf(title);
  const [t, humidity, pressure] = [column('t_C'), column('RH_pct'), column('p_station_Pa')];
  const rows = lines.map((line) => line.split(',').map(Number));
  return nights.map(({ from, hours }) => ({
    hours: rows.slice(from, from + hours).map((row, i) =>
      hour(instant(DUSK + i * HOUR_MS), 0, {
        temperature: celsiusToKelvin(row[t]!),
        relativeHumidity: ratio(row[humidity]! / 100),
        pressure: pascal(row[pressure]!),
      }),
    ),
    elevation: metre(elevation),
    source: {
      name,
      attribution: '',
      attributionUrl: null,
      issuedAt: DUSK,
      fetchedAt: DUSK,
      // The service's own ground is taken to be the station's.
      modelElevation: metre(elevation),
    },
  }));
}

/** Hours as they really were, night by night, all on one calendar: what is simulated knows no dates. */
export const REAL_NIGHTS: readonly HourSeries[] = FILES.flatMap(nightsOf);
