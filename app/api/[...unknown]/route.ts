import { problemResponse } from '@/app/api/_http/problem';

/** Every address below /api that is none of ours: programs get words in JSON, not a web page. */
function unknownAddress(): Response {
  return problemResponse({
    status: 404,
    detail: 'There is no such address. GET /api lists those there are.',
  });
}

export {
  unknownAddress as DELETE,
  unknownAddress as GET,
  unknownAddress as OPTIONS,
  unknownAddress as PATCH,
  unknownAddress as POST,
  unknownAddress as PUT,
};
