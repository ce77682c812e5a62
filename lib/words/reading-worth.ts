import type { Briefing } from '@/lib/club/briefing';
import type { Standing } from '@/lib/standing/standing';
import type { Instant } from '@/lib/time/instant';
import type { ClockZone } from '@/lib/time/zone';
import { formatTemperatureStep } from '@/lib/units/format';
import { kelvinDifference } from '@/lib/units/quantity';
import { counted } from './listing';
import { planClock, runName } from './runs';
import { clockText } from './times';
import type { Voice } from './voice';

type Asked = Pick<Standing, 'reading' | 'plan' | 'now'>;

/** "at 19:35", or "now" where that has come. */
function when(at: Instant, { plan, now }: Omit<Asked, 'reading'>, zone: ClockZone): string {
  return at <= now ? 'now' : `at ${clockText(at, planClock(plan, zone))}`;
}

/** "Read the thermometer at 19:35: it would tell the temperature of Round 3 to ±1.6 °F, not ±3.9 °F."; null: not asked for. */
export function readingWorthSentence(standing: Asked, { units, zone }: Voice): string | null {
  const { reading: worth, plan } = standing;
  if (worth === null) return null;
  const text = (sd: number) => formatTemperatureStep(kelvinDifference(sd), units, 1);
  return `Read the thermometer ${when(worth.at, standing, zone)}: it would tell the temperature of ${runName(plan, worth.run)} to ±${text(worth.sdAfter)}, not ±${text(worth.sdBefore)}.`;
}

/** The same for a club, whose readings count for all: "A reading before 20:40 would narrow 6 plans."; null: not asked for. */
export function clubReadingSentence({ planned }: Pick<Briefing, 'planned'>, zone: ClockZone): string | null {
  const asked = planned.flatMap(({ standing }) =>
    standing.reading === null ? [] : [{ standing, at: standing.reading.at }],
  );
  const [first] = [...asked].sort((a, b) => a.at - b.at);
  if (first === undefined) return null;
  const { standing, at } = first;
  const time = at <= standing.now ? 'now' : `before ${clockText(at, planClock(standing.plan, zone))}`;
  return `A reading ${time} would narrow ${counted(asked.length, 'plan')}.`;
}
