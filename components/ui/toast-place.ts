/** The id of the last element of every page: once that has arrived, all that stands before it has. */
export const TOAST_PLACE_ID = 'told';
