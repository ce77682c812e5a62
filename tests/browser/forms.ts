/** Addresses with something to type into, each with the button that stands there once it can be typed into. */
export const FORMS = [
  ['/#hours', 'Save hours'],
  ['/#event', 'Save event'],
  ['/#machine', 'Save machine'],
  ['/#forecast', 'Get the forecast'],
  ['/#reading', 'Use this reading'],
  ['/machines?edit=new', 'Save machine'],
  ['/trail', 'Display'],
  ['/club', 'Display'],
  ['/compare', 'Display'],
  ['/log', 'Display'],
] as const;
