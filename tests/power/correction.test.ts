import { describe, expect, it } from 'vitest';
import { correction, correctionFactor, dryPressure } from '@/lib/power/correction';
import { STANDARD_IDS, STANDARDS } from '@/lib/power/standards';
import { airOf, expectWithin, relative, standard, station } from '../support/air';

const codes = (...given: Parameters<typeof correction>) =>
  correction(...given).caveats.map(({ code }) => code);
const mild = airOf(20, station(995), relative(0.3));
const winterNight = airOf(-23, station(1000), relative(0.7));

describe('a power correction', () => {
  it('always names standard and edition', () => {
    for (const id of STANDARD_IDS) {
      expect(STANDARDS[id].id).toBe(id);
      expect(STANDARDS[id].name.length).toBeGreaterThan(5);
      expect(STANDARDS[id].revision.length).toBeGreaterThan(3);
    }
  });

  it('is 1 in the reference air of the standard', () => {
    for (const id of STANDARD_IDS) {
      const { referencePressure, referenceTemperature } = STANDARDS[id];
      const air = airOf(referenceTemperature - 273.15, station(referencePressure / 100), relative(0));
      expectWithin(correctionFactor(id, air), 1, 1e-12);
    }
  });

  it('is below 1 in cold thick air and above 1 in hot thin air, in every standard', () => {
    const hot = airOf(35, station(880), relative(0.4));
    for (const id of STANDARD_IDS) {
      expect(correctionFactor(id, winterNight)).toBeLessThan(1);
      expect(correctionFactor(id, hot)).toBeGreaterThan(1);
    }
  });

  it('leaves humidity out in DIN 70020 and says so where there is enough to matter', () => {
    const dry = airOf(30, station(1000), relative(0));
    const humid = airOf(30, station(1000), relative(0.9));
    expect(correctionFactor('din-70020', humid)).toBe(correctionFactor('din-70020', dry));
    expect(codes('din-70020', humid)).toEqual(['humidity-left-out']);
    expect(codes('din-70020', dry)).toEqual([]);
    // Saturation at 30 °C is 4246.8 Pa by CIPM-2007.
    expectWithin(dryPressure(humid), 100_000 - 0.9 * 4246.8, 1e-6);
  });
});

describe('outside the stated range', () => {
  it('ISO 1585 warns where its factor leaves 0.93 to 1.07', () => {
    expect(codes('iso-1585', mild)).toEqual([]);
    const { factor, caveats } = correction('iso-1585', winterNight);
    expect(caveats).toEqual([{ code: 'factor-outside-range', factor, lowest: 0.93, highest: 1.07 }]);
    expect(codes('iso-1585', airOf(10, station(850), relative(0.5)))).toEqual(['factor-outside-range']);
  });

  it('SAE J1349 warns of a winter night and of a mountain', () => {
    expect(codes('sae-j1349-2004', mild)).toEqual([]);
    expect(codes('sae-j1349-1990', winterNight)).toEqual(['temperature-outside-range']);
    expect(codes('sae-j1349-2004', airOf(5, station(700), relative(0.5)))).toEqual([
      'temperature-outside-range',
      'pressure-outside-range',
    ]);
  });

  it('SAE J607 states no range and so warns of none', () => {
    expect(codes('sae-j607', winterNight)).toEqual([]);
  });

  it('every standard says when the pressure is only an estimate', () => {
    const guessed = airOf(20, standard(200), relative(0.3));
    for (const id of STANDARD_IDS) expect(codes(id, guessed)).toContain('pressure-estimated');
  });
});
