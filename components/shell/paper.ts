/**
 * The ground of every page, for what cannot read a custom property: the browser's own bars and the start screen. The
 * same as --paper in app/globals.css.
 */
export const PAPER = { day: '#fcfaf6', night: '#080c10' } as const;
