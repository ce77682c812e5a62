/** Random numbers that are the same in every run. `uniform` in (0, 1), `normal` with mean 0 and sd 1. */
export type SeededRandom = { readonly uniform: () => number; readonly normal: () => number };

/** A 32-bit counter passed through a mixing function (the public-domain mulberry32). */
export function seededRandom(seed: number): SeededRandom {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  // Box–Muller.
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}
