/**
 * For a rule between the fields of an object: it is judged too where some of them are wrong or missing by themselves, so
 * that one answer names all there is to mend. Such a rule must expect any field to be anything.
 */
export const ALSO_WHEN_INCOMPLETE = {
  when: ({ value }: { readonly value: unknown }): boolean =>
    typeof value === 'object' && value !== null && !Array.isArray(value),
};
