/** How a run or a cylinder was, to choose from, leanest first. */
export const VERDICT_CHOICES = [
  { value: 'lean', label: 'Lean' },
  { value: 'right', label: 'Good' },
  { value: 'rich', label: 'Rich' },
] as const;

/** The same with "nobody judged it", for a whole run. */
export const RUN_VERDICTS = [...VERDICT_CHOICES, { value: 'none', label: 'Not judged' }] as const;

/** How the jets of a baseline were found to be. */
export const PROOF_CHOICES = [
  { value: 'edge', label: 'On the edge of lean' },
  { value: 'right', label: 'Good' },
  { value: 'size-rich', label: 'A size rich' },
] as const;

/** What each of them is taken to mean. */
export const PROOF_HINTS: Readonly<Record<(typeof PROOF_CHOICES)[number]['value'], string>> = {
  edge: 'Any leaner would have been too lean. The right jets are taken to be richer by the lean limit.',
  right: 'Neither lean nor rich by plugs, temperatures or piston wash.',
  'size-rich': 'Kept one size rich to be safe. The right jets are taken to be a size smaller.',
};
