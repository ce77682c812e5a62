import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MachineJson } from '@/lib/contract/machine';
import { fieldReader } from '@/lib/fields/field-reader';
import { groupOf } from '@/lib/fields/field-row';
import { fieldRowsFor } from '@/lib/fields/field-rows-for';
import { MACHINE } from '@/lib/fields/machine/machine-rows';
import { NUMBER_KINDS } from '@/lib/fields/number-kinds';
import { READING } from '@/lib/fields/reading/reading-rows';
import { blankDraft, draftFrom, fieldAt, fieldLabel, readFields } from '@/lib/fields/table-values';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { FULL_MACHINE } from '@/tests/editors/machines';

const f = fieldRowsFor<MachineJson>();
const said = { label: 'x', example: '1' };

describe('a row that does not fit its record', () => {
  // Each line that is told to be wrong must be: a mistake that compiled would be an error of the compiler here.
  it('does not compile: a place that is not there', () => {
    // @ts-expect-error no such place
    f.number({ ...said, at: 'limits.leanPercnt' });
    // @ts-expect-error a place in a list is not a place of its own
    f.number({ ...said, at: 'carburettors.main' });
    // @ts-expect-error of another record
    fieldRowsFor<{ readonly note: string }>().text({ label: 'x', at: 'name' });
    expect(f.number({ ...said, at: 'limits.leanPercent' }).at).toBe('limits.leanPercent');
  });

  it('does not compile: another kind than the place holds', () => {
    // @ts-expect-error a temperature is no pressure
    f.pressure({ ...said, at: 'baseline.air.temperatureC' });
    // @ts-expect-error a temperature is no bare number
    f.number({ ...said, at: 'fuelDensity.baselineC' });
    // @ts-expect-error a difference of temperatures is no temperature
    f.temperature({ ...said, at: 'intakeOffsetC' });
    // @ts-expect-error a share of one is typed in percent
    f.number({ ...said, at: 'limits.risk' });
    // @ts-expect-error a text is no number
    f.number({ ...said, at: 'name' });
    // @ts-expect-error a switch is for a boolean
    f.flag({ label: 'x', at: 'name' });
    // @ts-expect-error the record knows a third judgement
    f.choice({ label: 'x', at: 'baseline.judged', blank: 'edge', options: [{ value: 'edge', label: 'e' }] });
    expect(f.step({ ...said, at: 'intakeOffsetC' }).kind).toBe('step');
  });

  it('does not compile: a condition, a change or a name about a field that the form has not', () => {
    const rows = { on: f.flag({ label: 'x' }), size: f.number(said) };
    // @ts-expect-error no field `off`
    groupOf(rows, { asked: { size: ({ off }) => off } });
    // @ts-expect-error `on` is no text
    groupOf(rows, { sets: { size: () => ({ on: 'yes' }) } });
    // @ts-expect-error no field of that name is read
    readFields(READING, blankDraft(READING, US_UNITS), fieldReader(US_UNITS), { tempreature: () => 1 });
    expect(groupOf(rows, { asked: { size: ({ on }) => on } }).rows).toBe(rows);
  });
});

describe('a table', () => {
  it('leads from every place of a machine back to the field it was typed in', () => {
    const draft = draftFrom(MACHINE, FULL_MACHINE, METRIC_UNITS);
    const at = (...path: (string | number)[]) => fieldAt(MACHINE, draft, path);
    expect(at('limits', 'risk')).toBe('limits.risk');
    expect(at('pilot', 'jets', 2)).toBe('pilot.jets');
    expect(at('fuelDensity', 'baselineC')).toBe('fuelDensity.baseline');
    expect(at('baseline', 'intakeOffsetC')).toBe('baseline.intakeOffset');
    expect(at('intakeOffsetC')).toBe('intake.offset');
    expect(at('nothing', 'known')).toBeNull();
  });

  it('names every field that it shows, each name with a label', () => {
    for (const [group, { rows }] of Object.entries(MACHINE))
      for (const [key, row] of Object.entries(rows)) {
        const name = group === 'top' ? key : `${group}.${key}`;
        expect(fieldLabel(MACHINE, name), name).toBe(row.label);
        if (row.kind !== 'kept') expect(row.label, name).not.toBe('');
      }
  });

  it('keeps a group out of the record while its switch is off, and brings it back with it', () => {
    const draft = draftFrom(MACHINE, FULL_MACHINE, METRIC_UNITS);
    expect(draft.needle).toEqual({ on: true, groove: '3', grooves: '5', percentPerGroove: '2.4' });
    const off = { ...draft, needle: { ...draft.needle, on: false } };
    expect(readFields(MACHINE, draft, fieldReader(METRIC_UNITS))).toHaveProperty(
      'needle.percentPerGroove',
      2.4,
    );
    expect(readFields(MACHINE, off, fieldReader(METRIC_UNITS))).not.toHaveProperty('needle');
  });

  it('complains of a field that is out of its range, and of none that is not asked', () => {
    const reader = fieldReader(METRIC_UNITS);
    const draft = blankDraft(READING, METRIC_UNITS);
    readFields(READING, { ...draft, pressure: 'much', humidity: 'wet' }, reader);
    expect(Object.keys(reader.errors())).toEqual(['temperature', 'humidity']);
  });
});

describe('a number of any kind', () => {
  it('reads back from its own text, in either kind of units', () => {
    const values = {
      number: fc.double({ min: -500, max: 9000, noNaN: true }),
      temperature: fc.double({ min: -70, max: 60, noNaN: true }),
      step: fc.double({ min: -20, max: 60, noNaN: true }),
      pressure: fc.double({ min: 450, max: 1100, noNaN: true }),
      elevation: fc.double({ min: -430, max: 6000, noNaN: true }),
      percent: fc.double({ min: 0, max: 1, noNaN: true }),
      speed: fc.double({ min: 1, max: 600, noNaN: true }),
      way: fc.double({ min: 1, max: 2000, noNaN: true }),
      fall: fc.double({ min: -30, max: 12, noNaN: true }),
    } as const;
    for (const kind of Object.keys(values) as (keyof typeof values)[])
      fc.assert(
        fc.property(values[kind], fc.constantFrom(US_UNITS, METRIC_UNITS), (value, units) => {
          const read = NUMBER_KINDS[kind].read(NUMBER_KINDS[kind].write(value, units), units);
          // Half of the last digit that a text keeps: of a way, a hundredth of a mile (1.609344 km exactly).
          expect(read.ok && Math.abs(read.value - value)).toBeLessThan(kind === 'way' ? 0.0081 : 0.0051);
        }),
        { numRuns: 60 },
      );
  });
});
