const QUIET =
  /^(accepted|acceptedAir|planned|board|forecastId|toBeReproven|machine\/(tonight|baselineShift))(\/|$)/;

/** What the app notes by itself from what a person said: of two states one stands, and nobody has to look. */
export const isQuiet = ({ path }: { readonly path: string }): boolean => QUIET.test(path);
