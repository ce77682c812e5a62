/**
 * Preferences are a single record under this key. It stands apart from the schemas, so that a page can name the record
 * before the schemas have been loaded.
 */
export const PREFERENCES_ID = 'preferences';
