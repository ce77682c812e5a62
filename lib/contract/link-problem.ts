/** Why text that should hold a night (a link, a file) holds none that can be used. */
export type LinkProblem =
  | { readonly code: 'empty' }
  | { readonly code: 'too-long'; readonly limit: number }
  | { readonly code: 'newer-version'; readonly version: string }
  | { readonly code: 'damaged' }
  /** Whole and unharmed, but a field is not what a night needs. */
  | { readonly code: 'not-a-night'; readonly path: string; readonly message: string };
