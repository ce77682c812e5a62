/** The browser's database of this app: where there is none, nobody has been here yet. */
export const DATABASE_NAME = 'heavy-air';
