/**
 * What does not yet keep a rule of tests/habits.test.ts. Each list may only get shorter: what is mended is struck off
 * here, and nothing is added.
 */

/** Imports between folders of components that run up the floors of COMPONENT_ARROWS. */
export const UPWARD_ARROWS: readonly string[] = [
  'baseline -> night',
  'event -> night',
  'hardware -> baseline',
  'hardware -> night',
  'hours -> night',
  'learn -> baseline',
  'log -> night',
  'machine -> night',
  'reading -> night',
  'share -> night',
  'store -> night',
  'watch -> night',
  'weather -> night',
];

/** Pairs of folders of components that import each other. */
export const MUTUAL_PAIRS: readonly string[] = [
  'baseline <-> hardware',
  'baseline <-> learn',
  'event <-> night',
  'hours <-> night',
  'machine <-> night',
  'night <-> reading',
  'night <-> share',
  'night <-> store',
  'night <-> watch',
  'night <-> weather',
];

/** Names of lib and components that are exported twice. */
export const DOUBLE_NAMES: readonly string[] = [
  'Acts',
  'BaselineDraft',
  'Choice',
  'Clock',
  'EventEditor',
  'HoursEditor',
  'MachineEditor',
  'Night',
  'Observation',
  'SectionProps',
  'Spread',
  'Stretch',
  'Window',
  'askApi',
  'assemble',
  'inTime',
];

/** Exports that the product uses nowhere: they are to be used or taken out. */
export const ONLY_TESTED: readonly string[] = ['delayWarning', 'readingWorth', 'readingWorthSentence'];

/** Files of components without React, and their lines: pure code belongs to lib. */
export const PURE_IN_COMPONENTS = { files: 156, lines: 7960 } as const;
