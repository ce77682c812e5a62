/** What of a ride is still the page's example. */
export type ExampleParts = {
  /** The places and their heights. */
  readonly places: boolean;
  /** The temperatures. */
  readonly hours: boolean;
};

export type ExampleWords = {
  readonly title: string;
  readonly text: string;
  /** Whether an answer may stand below it. */
  readonly answer: boolean;
};

/**
 * What is said to somebody whose own machine stands beside the example's ride; null where the ride is his own. An answer
 * that mixes his ride with the example's would look like his and be nobody's: it is asked for first.
 */
export function exampleRideWords({ places, hours }: ExampleParts): ExampleWords | null {
  if (places && hours)
    return {
      title: 'The machine is yours, this ride is not.',
      text: 'Its places, heights and temperatures are an example. Do not set your machine by it: type your own ride below.',
      answer: true,
    };
  if (hours)
    return {
      title: 'How cold will it be?',
      text: 'The temperatures are still those of the example, not of your ride. Type yours below, or take the forecast.',
      answer: false,
    };
  if (places)
    return {
      title: 'Where do you ride?',
      text: 'The places and heights are still those of the example. Type yours below, or open a GPX track.',
      answer: false,
    };
  return null;
}

/** Said beside the elevation the page opens with, which may or may not be that of one's own trails. */
export function exampleElevationSentence(elevation: string): string {
  return `${elevation} is what this page opens with. If your trails lie elsewhere, type their elevation below: lower down the air is thicker and asks for more fuel.`;
}
