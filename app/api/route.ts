import { refusedBut } from '@/app/api/_http/handle';
import { openApiDocument } from '@/app/api/_openapi/document';

export function GET(): Response {
  return Response.json(openApiDocument(), { headers: { 'cache-control': 'no-store' } });
}

export const { DELETE, OPTIONS, PATCH, POST, PUT } = refusedBut('GET');
