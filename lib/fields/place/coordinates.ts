/** The two rows of a place, wherever a form asks for one. */
export const LATITUDE = {
  label: 'Latitude',
  at: 'place.latitude',
  hint: 'Or both, as a map gives them.',
  signed: true,
  inputMode: 'text',
} as const;

export const LONGITUDE = {
  label: 'Longitude',
  at: 'place.longitude',
  hint: 'West is negative, or 93.61 W.',
  signed: true,
  inputMode: 'text',
} as const;
