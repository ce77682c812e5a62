import { handle, onlyAllows } from '@/app/api/_http/handle';
import { openApiDocument } from '@/app/api/_openapi/document';
import { ok } from '@/lib/result/result';

export function GET(): Promise<Response> {
  return handle(async () => ok(openApiDocument()));
}

const notAllowed = onlyAllows('GET');

export { notAllowed as DELETE, notAllowed as PATCH, notAllowed as POST, notAllowed as PUT };
