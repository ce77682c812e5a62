/** What a notification's own button says once the jet is in; alone, since the worker that shows it is to stay small. */
export const IT_IS_IN = 'It is in';
