import { onlyAllows } from '@/app/api/_http/handle';
import { openApiDocument } from '@/app/api/_openapi/document';

export function GET(): Response {
  return Response.json(openApiDocument(), { headers: { 'cache-control': 'no-store' } });
}

const notAllowed = onlyAllows('GET');

export {
  notAllowed as DELETE,
  notAllowed as OPTIONS,
  notAllowed as PATCH,
  notAllowed as POST,
  notAllowed as PUT,
};
