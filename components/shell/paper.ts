/**
 * The ground of every page, for what cannot read a custom property: the browser's own bars and the start screen. The
 * same as --paper in app/globals.css.
 */
export const PAPER = { day: '#fbf9f4', night: '#0b0d0f' } as const;
