/**
 * What a button says that tells that jets are in, where they are named beside it. Alone, since the worker that shows
 * notifications is to stay small.
 */
export const IT_IS_IN = 'Done: it is in';
