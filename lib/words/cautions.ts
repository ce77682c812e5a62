/** Where a caution belongs: beside the act it is about. */
export type CautionPlace = 'swap' | 'after-swap' | 'first-run' | 'indoors' | 'ice' | 'model';

export type Caution = { readonly place: CautionPlace; readonly text: string };

/** The usual cautions of the paddock, in plain words: common practice, no source, unless a line says otherwise. */
export const CAUTIONS: readonly Caution[] = [
  { place: 'swap', text: 'Engine off and cool enough to touch. Fuel tap shut.' },
  {
    place: 'swap',
    text: 'Catch the fuel from the float bowl in a can. No flame, no spark, no cigarette, no heater with a glow.',
  },
  { place: 'swap', text: 'Gloves on: cold fuel freezes bare skin. Wipe up what drips before you start.' },
  {
    place: 'swap',
    text: 'Read the number on the jet before it goes in, and count the old ones back into the box.',
  },
  { place: 'after-swap', text: 'Fuel on, look for drips, check that the throttle snaps shut, then start.' },
  {
    place: 'first-run',
    text: 'New jets are a guess until the plugs agree: after the first run stop, read plugs and piston wash, and only then hold it wide open.',
  },
  {
    place: 'first-run',
    text: 'If it rattles, surges or feels hot and sharp, lift off: a lean engine seizes in seconds.',
  },
  {
    place: 'indoors',
    text: 'Run the engine in free air only. Carbon monoxide in a trailer, garage or tent kills without a smell.',
  },
  {
    place: 'ice',
    text: 'A seizure at speed locks the drive. Keep a hand on the clutch or the kill switch, and know how thick the ice is.',
  },
  {
    place: 'model',
    text: 'This is arithmetic on a forecast. The maker’s manual, the sanctioning body’s rules and local rules come first.',
  },
  { place: 'model', text: 'The baseline is yours: numbers are only as right as the jets you call proven.' },
];

export function cautionsFor(place: CautionPlace): readonly string[] {
  return CAUTIONS.filter((caution) => caution.place === place).map(({ text }) => text);
}

/** The cautions of a swap in one line, for where there is room for no more: common practice, no source. */
export const SWAP_CAUTION_LINE =
  'Engine off and cool, fuel tap shut, bowl fuel caught, no flame or spark, gloves on; read the number on the jet; read the plugs after the first run.';
