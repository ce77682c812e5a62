import { describe, expect, it } from 'vitest';
import { boardRequests } from '@/lib/board/board-requests';
import { planPosted } from '@/lib/board/plan-posted';
import { boardStarts } from '@/lib/board/starts';
import { boardPostSchema } from '@/lib/contract/board';
import { seriesFromJson } from '@/lib/contract/series-from-json';
import { planMany } from '@/lib/plan/make-plan';
import { expectOk } from '@/lib/result/result';
import { standingOf } from '@/lib/standing/standing';
import { addMinutes, instant } from '@/lib/time/instant';
import { boardOnClock, onClock } from '@/lib/words/board-clock';
import { jobWords } from '@/lib/words/job';
import { NIGHT } from '@/tests/api/night';

const posted = boardPostSchema.parse({
  event: NIGHT.event,
  hours: NIGHT.hours,
  machines: [{ id: 'ada', machine: NIGHT.machine }],
});
const series = expectOk(seriesFromJson(posted.hours, posted.event.elevationM));
const START = instant(Date.parse('2027-01-16T18:00:00-06:00'));

describe('a board on a 12-hour clock', () => {
  it('says what the same words say where they are made for that clock, all evening', () => {
    const zone = { zone: posted.event.timezone, hours: '12' } as const;
    let told = 0;
    for (let minutes = 0; minutes <= 360; minutes += 10) {
      const now = addMinutes(START, minutes);
      const { body } = expectOk(
        planPosted(posted, {
          memory: {},
          series,
          now,
          saidBy: null,
          firstStarts: boardStarts(posted),
          postedAt: START,
        }),
      );
      const answer = { id: 'b', revision: 1, expiresAt: body.postedAt, pushKey: null, keeper: null, ...body };
      const job = boardOnClock(answer, '12').machines[0]?.job;
      const requests = expectOk(boardRequests(posted, { series, now }));
      const standing = standingOf(requests[0]!, expectOk(planMany(requests)[0]!));
      const words = jobWords(standing, zone);
      expect(job?.lead).toBe(words.lead);
      expect(job?.window).toBe(words.when?.window ?? null);
      expect(job?.lines).toEqual(words.lines.filter((line) => line !== ''));
      if (/[ap]m/.test(JSON.stringify(job))) told += 1;
    }
    expect(told).toBeGreaterThan(5);
  });

  it('leaves alone what is no time, and everything for who reads 24 hours', () => {
    expect(onClock('Premix 32:1, 100:1, 24:00, 7:45, 420 410', '12')).toBe(
      'Premix 32:1, 100:1, 24:00, 7:45, 420 410',
    );
    expect(onClock('19:05 to 00:10', '12')).toBe('7:05\u00a0pm to 12:10\u00a0am');
    expect(onClock('19:05', '24')).toBe('19:05');
  });
});
