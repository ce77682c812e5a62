import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod/mini';

const routeSchema = z.object({ page: z.string(), regex: z.string() });
const manifestSchema = z.object({
  staticRoutes: z.array(routeSchema),
  dynamicRoutes: z.array(routeSchema),
});

/** Tells which route a path belongs to: a short list of names, whatever is asked for. */
export type RouteOf = (path: string) => string;

/** Reads the routes of the build in a folder. */
export function readRoutes(folder: string): RouteOf {
  const manifest = manifestSchema.parse(
    JSON.parse(readFileSync(join(folder, '.next', 'routes-manifest.json'), 'utf8')),
  );
  const routes = [...manifest.staticRoutes, ...manifest.dynamicRoutes].map(({ page, regex }) => ({
    page,
    // Written by the build, from the names of our own files.
    pattern: new RegExp(regex),
  }));
  return (path) => {
    if (path.startsWith('/_next/')) return '/_next';
    return routes.find(({ pattern }) => pattern.test(path))?.page ?? 'none';
  };
}
