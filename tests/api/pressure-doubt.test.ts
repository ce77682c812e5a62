import { describe, expect, test } from 'vitest';
import { airsAnswerSchema } from '@/lib/contract/air-request';
import { planAnswerSchema } from '@/lib/contract/plan-answer';
import { answerOf, askAir, askPlan, type PlanBody } from './ask';
import { NIGHT, night } from './night';

type Machine = typeof NIGHT.machine;
type Air = Machine['baseline']['air'];

const ABOUT_PRESSURE = /pressure-(in-doubt|without-elevation)$/;

/** Codes of the warnings about the kind of a pressure, and their words. */
async function warned(body: PlanBody) {
  const { warnings } = await answerOf(await askPlan(body), planAnswerSchema);
  return warnings.filter(({ code }) => ABOUT_PRESSURE.test(code));
}

/** The night with a baseline of this air, and hours all of this pressure, at an elevation. */
function nightAt(elevationM: number, air: Partial<Air>, hour: object): PlanBody {
  const { machine, event, hours } = NIGHT;
  return night({
    machine: { ...machine, baseline: { air: { temperatureC: -8, elevationM, ...air } } },
    event: { ...event, elevationM },
    hours: hours.map(({ time, temperatureC }) => ({ time, temperatureC, ...hour })),
  });
}

describe('POST /api/plan warns about the kind of a pressure', () => {
  test('of a baseline: 1022 hPa as station pressure at 300 m', async () => {
    const found = await warned(nightAt(300, { pressureHpa: 1022 }, { pressureHpa: 980 }));
    expect(found.map(({ code }) => code)).toEqual(['baseline-pressure-in-doubt']);
    expect(found[0]?.message).toMatch(/1022.hPa as station pressure at 300.m.*Is it a sea-level number/);
  });

  test('of hours: 30.05 inHg (1017.6 hPa) as station pressure at 274 m and at 402 m', async () => {
    for (const elevationM of [274, 402]) {
      const found = await warned(nightAt(elevationM, { seaLevelHpa: 1013 }, { pressureHpa: 1017.6 }));
      expect(found.map(({ code }) => code)).toEqual(['hours-pressure-in-doubt']);
    }
  });

  test('of a baseline beside the hours, where neither is odd', async () => {
    expect(await warned(nightAt(200, { pressureHpa: 988 }, { pressureHpa: 986 }))).toEqual([]);
    expect(
      (await warned(nightAt(200, { pressureHpa: 1012 }, { pressureHpa: 988 }))).map(({ code }) => code),
    ).toEqual(['baseline-pressure-in-doubt']);
    expect(
      (await warned(nightAt(200, { pressureHpa: 988 }, { pressureHpa: 1012 }))).map(({ code }) => code),
    ).toEqual(['hours-pressure-in-doubt']);
  });

  test('of a baseline without elevation raced at another pressure', async () => {
    const bare = (pressureHpa: number, confirmed?: boolean) =>
      nightAt(
        402,
        { elevationM: undefined, pressureHpa, pressureConfirmed: confirmed },
        { pressureHpa: 965 },
      );
    expect((await warned(bare(1013))).map(({ code }) => code)).toEqual([
      'baseline-pressure-without-elevation',
    ]);
    expect((await warned(bare(930))).map(({ code }) => code)).toEqual([
      'baseline-pressure-without-elevation',
    ]);
    expect(await warned(bare(975))).toEqual([]);
    expect(await warned(bare(1013, true))).toEqual([]);
  });

  test('of a station number sent as a sea-level one', async () => {
    const found = await warned(nightAt(402, { pressureHpa: 970 }, { seaLevelHpa: 970 }));
    expect(found.map(({ code }) => code)).toEqual(['hours-pressure-in-doubt']);
    expect(found[0]?.message).toContain('Is it station pressure?');
  });

  test('of a reading that differs by just the reduction, and leaves it out until it is confirmed', async () => {
    const hours = nightAt(300, { pressureHpa: 975 }, { pressureHpa: 978 });
    const reading = { time: '2027-01-16T18:30:00-06:00', temperatureC: -8.5, pressureHpa: 1014 };
    const found = await warned({ ...hours, readings: [reading] });
    expect(found.map(({ code }) => code)).toEqual(['reading-pressure-in-doubt']);
    expect(await warned({ ...hours, readings: [{ ...reading, confirmed: true }] })).toEqual([]);
    expect(await warned({ ...hours, readings: [{ ...reading, pressureHpa: 981 }] })).toEqual([]);
  });

  test('once: what a person has confirmed is not asked about again', async () => {
    const confirmed = { pressureConfirmed: true };
    expect(await warned(nightAt(300, { pressureHpa: 1022, ...confirmed }, { pressureHpa: 980 }))).toEqual([]);
    expect(await warned(nightAt(300, { pressureHpa: 980 }, { pressureHpa: 1022, ...confirmed }))).toEqual([]);
  });

  test('and not where the number is called what it is, or is plain weather', async () => {
    expect(await warned(nightAt(300, { seaLevelHpa: 1022 }, { altimeterHpa: 1010 }))).toEqual([]);
    expect(await warned(nightAt(300, { pressureHpa: 985 }, {}))).toEqual([]);
    expect(await warned(night())).toEqual([]);
  });
});

describe('POST /api/air', () => {
  const airs = async (states: readonly object[]) => answerOf(await askAir({ states }), airsAnswerSchema);

  test('counts the states whose pressure is in doubt and says which is the first', async () => {
    const odd = { temperatureC: -10, pressureHpa: 1022, elevationM: 300, relativeHumidity: 0.8 };
    const { warnings } = await airs([
      { ...odd, pressureHpa: 985 },
      odd,
      odd,
      { ...odd, pressureConfirmed: true },
    ]);
    expect(warnings).toMatchObject([{ code: 'pressure-in-doubt', states: 2 }]);
    expect(warnings[0]?.message).toMatch(/^states\[1\]: 1022/);
  });
});
