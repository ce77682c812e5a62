import { describe, expect, it } from 'vitest';
import type { Needle } from '@/lib/carb/machine';
import { needleFor } from '@/lib/carb/needle';
import { ratio } from '@/lib/units/quantity';

const NEEDLE: Needle = { groove: 3, grooves: 5, richerPerGroove: ratio(0.025) };
const groove = Math.log(1.025);

describe('the needle', () => {
  it("keeps its groove in the baseline's air, even where nothing lean is allowed", () => {
    expect(needleFor(NEEDLE, 0, 0)).toEqual({ groove: 3, grooveWanted: 3, logLeft: 0, beyondNeedle: false });
  });

  it('goes down a groove, which lifts it, for air that needs a groove of fuel', () => {
    expect(needleFor(NEEDLE, groove, 0.01).groove).toBe(4);
    expect(needleFor(NEEDLE, -groove, 0.01).groove).toBe(2);
  });

  it('rounds to the rich side once the lean limit is passed, not before', () => {
    // 0.3 of a groove is 0.74 % lean: inside a limit of 1 %, outside one of 0.5 %.
    expect(needleFor(NEEDLE, 0.3 * groove, 0.01).groove).toBe(3);
    const rich = needleFor(NEEDLE, 0.3 * groove, 0.005);
    expect(rich.groove).toBe(4);
    expect(rich.logLeft).toBeCloseTo(0.7 * groove, 12);
  });

  it('says when the needle has no groove that far', () => {
    expect(needleFor(NEEDLE, 3 * groove, 0.01)).toMatchObject({
      groove: 5,
      grooveWanted: expect.closeTo(6, 9),
      beyondNeedle: true,
    });
    expect(needleFor(NEEDLE, -3 * groove, 0.01)).toMatchObject({ groove: 1, beyondNeedle: true });
  });

  it('at the last groove what is missing is told as lean', () => {
    expect(needleFor(NEEDLE, 3 * groove, 0.01).logLeft).toBeCloseTo(-groove, 12);
  });
});
