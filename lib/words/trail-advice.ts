/** What the physics here does not reach, as riders have it. Common practice, no source, unless a line says otherwise. */
export const CUTAWAY_ADVICE: readonly string[] = [
  'After boring: about one main size up for each millimetre, then prove it again.',
  'If it then goes lean just off idle with the screw at its rich end, a slide with less cutaway, one step at a time. Pilot first, cutaway second, needle third.',
];

/** Where the numbers of a season come from and what they leave out. */
export const SEASON_LIMITS: readonly string[] = [
  'Pilot and needle follow the same need as the main, each in its own part of the throttle. Set them on a warm engine.',
  'A number of turns is a starting point. Let the engine settle after each eighth.',
];

/** Said where past winters are asked of a town that lies higher or lower than the trail; `typed` null: none was typed. */
export function townElevationSentence(
  name: string,
  { town, typed }: { readonly town: string; readonly typed: string | null },
): string {
  return typed === null
    ? `${name} lies at ${town}. No elevation of the place is typed above, so past winters are told for ${town}.`
    : `${name} lies at ${town}; past winters are told for ${typed}, the elevation of the place above.`;
}
