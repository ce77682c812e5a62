/** What a machine is called that somebody read off without a name for it. */
export const HOME_NAME = 'My machine';

export const PILOT_NEEDED = 'Type the number on the pilot jet, or leave its turns empty too.';
export const TURNS_NEEDED = 'Count the turns of the screw, or leave the pilot jet empty too.';

/** The two ways in, for whoever adds a first machine. */
export const FIRST_MACHINE = {
  know: 'I know my jets',
  home: 'I only know it runs right at home',
  knowHint: 'You know what is in it, what you own, and in which air it was right.',
  homeHint: 'You read up to eight things off the machine, each shown in a picture or in words.',
} as const;

export const HOME_INTRO =
  'Where it runs right, what is in it is right for that air. Read it off once, and the jet card says what every other day asks for.';

/** What each part is and where it is read off. */
export const HOME_PARTS = {
  main: 'The main jet is a brass screw with a hole, at the bottom of the carburettor inside the float bowl. It meters the fuel at full throttle. A dealer or the manual can tell which one is in.',
  air: 'Cold air and low places ask for more fuel, warm air and high places for less. The card counts from the air in which your machine runs right.',
  pilot:
    'The pilot jet is the small jet beside the main. It meters the fuel from idle to a quarter throttle, and a screw on the outside trims it. A screw on the engine side is a fuel screw, one on the air box side an air screw.',
  clip: 'The needle hangs in the slide by a clip. It meters the fuel from a quarter to three quarters of the throttle.',
} as const;

export const HOME_DONE =
  'It stands among your machines, with the jets that are in it and the careful limits of the trail. Add the jets you own there, and the card will choose from them.';
