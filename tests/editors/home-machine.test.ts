import { describe, expect, it } from 'vitest';
import { machineFromJson } from '@/lib/contract/machine-from-json';
import { HOME, type HomeDraft } from '@/lib/fields/machine/home-rows';
import { readHome } from '@/lib/fields/machine/read-home';
import { blankDraft } from '@/lib/fields/table-values';
import { expectOk } from '@/lib/result/result';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { screwDrawingWords, screwWaySentence } from '@/lib/words/screw';
import { AIR_SCREW_PILOT, SPRING_PILOT } from '@/tests/support/trail-machine';

const blank = blankDraft(HOME, METRIC_UNITS);
const whole: HomeDraft = {
  ...blank,
  main: '380',
  temperature: '-4',
  elevation: '620',
  pilot: '45',
  turns: '1.5',
  groove: '3',
};
const read = (change: Partial<HomeDraft>) => readHome({ ...whole, ...change });

describe('a machine read off at home', () => {
  it('asks for eight things at most', () => {
    expect(Object.keys(HOME.top.rows).length).toBeLessThanOrEqual(8);
  });

  it('becomes one that plans can be made for, with the limits of a trail and what is fitted in its box', () => {
    const { value, errors } = read({});
    expect(errors).toEqual({});
    expect(value).toMatchObject({
      carburettors: [{ main: 380 }, { main: 380 }],
      box: [{ size: 380, count: 2 }],
      baseline: { air: { temperatureC: -4, elevationM: 620 }, judged: 'right' },
      pilot: { jet: 45, screw: 'fuel', turns: 1.5 },
      needle: { groove: 3, grooves: 5 },
      limits: { leanPercent: 1, richPercent: 8, risk: 0.02 },
      jetMarking: 'flow',
    });
    const machine = expectOk(machineFromJson(value!));
    expect(machine.pilot?.turns).toBe(1.5);
    expect(machine.needle?.groove).toBe(3);
  });

  it('needs neither pilot nor clip', () => {
    const { value, errors } = read({ pilot: '', turns: '', groove: '' });
    expect(errors).toEqual({});
    expect([value!.pilot, value!.needle]).toEqual([undefined, undefined]);
  });

  it('says what goes with what', () => {
    expect(Object.keys(read({ turns: '' }).errors)).toEqual(['turns']);
    expect(Object.keys(read({ pilot: '' }).errors)).toEqual(['pilot']);
    for (const reading of [read({ turns: '' }), read({ pilot: '' })]) expect(reading.value).toBeNull();
  });

  it('complains beside the field that was left out or cannot be read, once each', () => {
    expect(Object.keys(readHome(blank).errors)).toEqual(['main', 'temperature', 'elevation']);
    for (const key of ['main', 'temperature', 'elevation', 'pilot', 'turns', 'groove'] as const)
      for (const text of ['x', '1e999', '-', '٣', '99999999']) {
        const { value, errors } = read({ [key]: text });
        expect(Object.keys(errors), `${key} ${text}`).toEqual([key]);
        expect(value).toBeNull();
      }
  });

  it('reads its numbers in the units of the person', () => {
    // 23 °F = −5 °C; 2000 ft = 609.6 m, both exact by definition of the units.
    const { value } = readHome({ ...whole, units: US_UNITS, temperature: '23', elevation: '2000' });
    expect(value!.baseline.air).toEqual({ temperatureC: -5, elevationM: 609.6 });
  });

  it('takes turns and grooves beyond the usual range, as they are', () => {
    const { value } = read({ turns: '3', groove: '6' });
    expect(value!.pilot).toMatchObject({ turns: 3, mostTurns: 3 });
    expect(value!.needle).toMatchObject({ groove: 6, grooves: 6 });
    expect(read({ turns: '0.25' }).value!.pilot).toMatchObject({ leastTurns: 0.25 });
  });

  it('takes a number that can be no flow mark for the hole', () => {
    expect(read({ main: '162' }).value!.jetMarking).toBe('bore');
    expect(read({ main: '160' }).value!.jetMarking).toBe('flow');
  });
});

describe('the drawing of a screw', () => {
  it.each([SPRING_PILOT, AIR_SCREW_PILOT])(
    'says the same way as the sentence beside every screw: $screw',
    (pilot) => {
      const way = /out (?:is |it lets .*: )(richer|leaner)/;
      expect(screwDrawingWords(pilot.screw).match(way)?.[1]).toBe(screwWaySentence(pilot).match(way)?.[1]);
    },
  );
});
