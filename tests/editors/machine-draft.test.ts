import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { machineSchema } from '@/lib/contract/machine';
import { blankMachineDraft, draftFromMachine } from '@/lib/fields/machine/draft-from-machine';
import type { MachineDraft } from '@/lib/fields/machine/machine-rows';
import { readMachine } from '@/lib/fields/machine/read-machine';
import { withUnshown } from '@/lib/fields/machine/with-unshown';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { FULL_MACHINE } from './machines';

/** What a racer in a hurry types: name, mains, box and baseline air. */
function hurried(units = US_UNITS): MachineDraft {
  const blank = blankMachineDraft(units);
  return {
    ...blank,
    name: 'Blue 600',
    main: '410',
    box: { ...blank.box, text: '400x3 410x3 420' },
    baseline: { ...blank.baseline, temperature: '14', elevation: '1150' },
  };
}

const withBaseline = (draft: MachineDraft, baseline: Partial<MachineDraft['baseline']>): MachineDraft => ({
  ...draft,
  baseline: { ...draft.baseline, ...baseline },
});

describe('a machine being typed', () => {
  it('is finished once its name, mains, box and baseline air are typed', () => {
    const { value, errors } = readMachine(hurried());
    expect(errors).toEqual({});
    expect(value).toMatchObject({
      name: 'Blue 600',
      carburettors: [{ main: 410 }, { main: 410 }],
      jetMarking: 'flow',
      box: [
        { size: 400, count: 3 },
        { size: 410, count: 3 },
        { size: 420, count: 1 },
      ],
      limits: { leanPercent: 2, richPercent: 5, risk: 0.05 },
    });
    // 14 °F = -10 °C; 1150 ft = 350.52 m, both exact by definition of the units.
    expect(value?.baseline.air).toEqual({ temperatureC: -10, elevationM: 350.52 });
    expect(value?.response).toBeUndefined();
    expect(value?.pilot).toBeUndefined();
  });

  it('names each missing field once, in the order of the form', () => {
    const { value, errors } = readMachine(blankMachineDraft(US_UNITS));
    expect(value).toBeNull();
    expect(Object.keys(errors)).toEqual([
      'name',
      'main',
      'box.text',
      'baseline.temperature',
      'baseline.elevation',
    ]);
    for (const sentence of Object.values(errors)) expect(sentence).toMatch(/^[A-Z“"].*[.?!]$/);
  });

  it('reads back as the same machine, in either kind of units', () => {
    for (const units of [US_UNITS, METRIC_UNITS]) {
      const { value, errors } = readMachine(draftFromMachine(FULL_MACHINE, units));
      expect(errors).toEqual({});
      const { baseline, intakeOffsetC, fuelDensity, ...rest } = FULL_MACHINE;
      expect(value).toMatchObject(rest);
      expect(value?.baseline).toMatchObject({
        judged: 'size-rich',
        provenOn: '2026-12-19',
        note: baseline.note,
      });
      // Fields hold three decimals of a degree, four of an inch of mercury (0.003 hPa) and two of a foot.
      expect(value?.baseline.air.temperatureC).toBeCloseTo(-12.3, 3);
      expect(value?.baseline.air.dewPointC).toBeCloseTo(-15.6, 3);
      expect(value?.baseline.air.altimeterHpa).toBeCloseTo(1017.4, 2);
      expect(value?.baseline.air.elevationM).toBeCloseTo(351, 2);
      expect(value?.baseline.intakeOffsetC).toBeCloseTo(4.2, 3);
      expect(value?.intakeOffsetC).toBeCloseTo(8.6, 3);
      expect(value?.fuelDensity?.offsetC).toBeCloseTo(2.9, 3);
      expect(value?.fuelDensity?.baselineC).toBeCloseTo(11, 3);
    }
  });

  it('does not drift when it is opened and saved again and again', () => {
    const once = readMachine(draftFromMachine(FULL_MACHINE, US_UNITS)).value;
    const twice = once && readMachine(draftFromMachine(once, US_UNITS)).value;
    expect(twice).toEqual(once);
  });

  it('keeps every machine with any temperature, elevation and offset near enough', () => {
    const machine = fc.record({
      temperatureC: fc.double({ min: -60, max: 45, noNaN: true }),
      elevationM: fc.double({ min: -400, max: 4500, noNaN: true }),
      intakeOffsetC: fc.double({ min: -20, max: 60, noNaN: true }),
      units: fc.constantFrom(US_UNITS, METRIC_UNITS),
    });
    fc.assert(
      fc.property(machine, ({ temperatureC, elevationM, intakeOffsetC, units }) => {
        const json = machineSchema.parse({
          ...FULL_MACHINE,
          intakeOffsetC,
          baseline: { air: { temperatureC, elevationM } },
        });
        const { value, errors } = readMachine(draftFromMachine(json, units));
        expect(errors).toEqual({});
        expect(value?.baseline.air.temperatureC).toBeCloseTo(temperatureC, 3);
        expect(value?.baseline.air.elevationM).toBeCloseTo(elevationM, 2);
        expect(value?.intakeOffsetC).toBeCloseTo(intakeOffsetC, 3);
      }),
      { numRuns: 200 },
    );
  });

  it('lets a typed unit win over the chosen one, with a decimal comma and a true minus', () => {
    const draft = withBaseline(hurried(US_UNITS), {
      temperature: '−12,5 °C',
      elevation: '1.600 m',
      pressureKind: 'sea-level',
      pressure: '1013 hPa',
    });
    const { value, errors } = readMachine(draft);
    expect(errors).toEqual({});
    expect(value?.baseline.air).toEqual({ temperatureC: -12.5, elevationM: 1600, seaLevelHpa: 1013 });
  });

  it('catches a sea-level number typed as station pressure and says what to do', () => {
    const draft = withBaseline(hurried(METRIC_UNITS), {
      temperature: '15',
      elevation: '1600',
      pressureKind: 'station',
      pressure: '1015',
    });
    const { value, errors } = readMachine(draft);
    expect(value).toBeNull();
    expect(Object.keys(errors)).toEqual(['baseline.pressure']);
    expect(errors['baseline.pressure']).toContain('cannot be the station pressure at 1,600');
  });

  it('asks for the elevation whatever the kind of pressure, so that the trap can be seen', () => {
    const draft = withBaseline(hurried(METRIC_UNITS), {
      pressureKind: 'station',
      pressure: '985',
      elevation: '',
    });
    expect(Object.keys(readMachine(draft).errors)).toEqual(['baseline.elevation']);
  });

  it('takes the mains one by one where the jetting is staggered', () => {
    const draft: MachineDraft = {
      ...hurried(),
      carburettors: '3',
      staggered: true,
      mains: ['410', '400', 'abc', '999', '', ''],
    };
    const { errors } = readMachine(draft);
    expect(Object.keys(errors)).toEqual(['mains.2']);
    const mended = readMachine({ ...draft, mains: ['410', '400', '410', '999', '', ''] });
    expect(mended.value?.carburettors).toEqual([{ main: 410 }, { main: 400 }, { main: 410 }]);
  });

  it('refuses a number no jet or air can have, beside the field it stands in', () => {
    expect(Object.keys(readMachine({ ...hurried(), main: '1e309' }).errors)).toEqual(['main']);
    expect(Object.keys(readMachine({ ...hurried(), main: 'NaN' }).errors)).toEqual(['main']);
    expect(Object.keys(readMachine({ ...hurried(), main: '-410' }).errors)).toEqual(['main']);
    expect(Object.keys(readMachine(withBaseline(hurried(), { temperature: '400' })).errors)).toEqual([
      'baseline.temperature',
    ]);
  });

  it('says a chance and a humidity in percent, as they are typed', () => {
    const draft = withBaseline(
      { ...hurried(), limits: { choice: 'own', leanPercent: '2', richPercent: '5', risk: '80' } },
      { humidityKind: 'relative', humidity: '180 %' },
    );
    const { errors } = readMachine(draft);
    expect(errors['limits.risk']).toBe('Type a percentage from 0.1 to 50.');
    expect(errors['baseline.humidity']).toBe('Relative humidity lies between 0 and 100 %.');
  });

  it('holds a list of own jets against the jets that are named', () => {
    const list = { ...hurried(), marking: 'list' as const };
    expect(readMachine({ ...list, list: '400 1.00\n410 1.03\n420 1.06' }).value?.jetMarking).toEqual({
      list: [
        { size: 400, area: 1 },
        { size: 410, area: 1.03 },
        { size: 420, area: 1.06 },
      ],
    });
    expect(readMachine({ ...list, list: '400 1.00' }).errors.list).toContain('at least two jets');
    expect(readMachine({ ...list, list: '400 1.00\n410 big' }).errors.list).toContain('“410 big”');
    // 420 is in the box, so its area must be known.
    expect(readMachine({ ...list, list: '400 1.00\n410 1.03' }).errors['box.text']).toContain('Jet 420');
  });

  it('describes a box as a range', () => {
    const ranged = (box: Partial<MachineDraft['box']>): MachineDraft => ({
      ...hurried(),
      box: { how: 'range', text: '', from: '380', to: '460', by: '10', each: '3', ...box },
    });
    expect(readMachine(ranged({})).value?.box).toEqual(
      [380, 390, 400, 410, 420, 430, 440, 450, 460].map((size) => ({ size, count: 3 })),
    );
    expect(readMachine(ranged({ to: '370' })).errors['box.to']).toContain('smaller than 380');
    expect(readMachine(ranged({ by: '0' })).errors['box.by']).toContain('greater than 0');
    expect(readMachine(ranged({ by: '0.5' })).errors['box.by']).toContain('more than 100 sizes');
    expect(readMachine(ranged({ each: '2.5' })).errors['box.each']).toContain('whole number');
  });

  it('keeps trim, pilot and needle out until they are asked for', () => {
    const draft = hurried();
    expect(readMachine({ ...draft, trim: { ...draft.trim, on: true } }).errors).toHaveProperty([
      'trim.percentPerPosition',
    ]);
    expect(
      Object.keys(readMachine({ ...draft, pilot: { ...draft.pilot, on: true, jets: '35 x' } }).errors),
    ).toEqual(['pilot.jet', 'pilot.turns', 'pilot.jets']);
    const needle = { on: true, groove: '7', grooves: '5', percentPerGroove: '2.5' };
    expect(readMachine({ ...draft, needle }).errors['needle.groove']).toBe('The groove must exist.');
  });
});

describe('a machine saved after a change', () => {
  const machine = machineSchema.parse({
    ...FULL_MACHINE,
    baseline: { air: { temperatureC: -7.123456, elevationM: 351.2345 } },
    response: { ...FULL_MACHINE.response, pressureExponent: 0.6543210987 },
    hardware: [{ kind: 'bored', amount: 1 }],
    baselineShift: { logArea: 0.012, sd: 0.004 },
  });
  const opened = { machine, draft: draftFromMachine(machine, US_UNITS) };
  const saved = (draft: MachineDraft) => withUnshown(readMachine(draft), draft, opened).value;

  it('keeps to the last digit what nobody touched', () => {
    expect(saved(opened.draft)).toEqual(machine);
    expect(saved({ ...opened.draft, name: 'Red 800' })).toEqual({ ...machine, name: 'Red 800' });
  });

  it('lets go of what the log taught about another baseline', () => {
    const other = saved(withBaseline(opened.draft, { temperature: '20' }));
    expect(other?.baselineShift).toBeUndefined();
    expect(other?.hardware).toEqual(machine.hardware);
    expect(
      saved({ ...opened.draft, mains: ['420', '400', '410', '', '', ''] })?.baselineShift,
    ).toBeUndefined();
  });
});
