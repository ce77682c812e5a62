/** What a board is for; alone, since it stands on the first page and the rest of a board's words do not. */
export const BOARD_OFFER = 'The server watches this night and buzzes the phones of those who follow it.';
