import { version } from '@/package.json';

/** The one number of this version of Heavy Air: package.json's, told to weather services and by the API's document. */
export const VERSION: string = version;
