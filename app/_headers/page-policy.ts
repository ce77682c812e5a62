/** Next's name for the page shown where there is none. */
const NOT_FOUND = '/_not-found';

/** Page -> hashes of the inline scripts it was built with, each in quotes as a policy wants it. */
export type HashesByPage = Readonly<Record<string, readonly string[]>>;

/**
 * What a page may load and run. Its own inline scripts are known by their hashes; where there are none, no inline script
 * runs at all: a broken page is safer than an open one. A development server builds its scripts as it goes and says so
 * with `developing`.
 */
export function pagePolicy(
  path: string,
  { hashes, developing }: { readonly hashes: HashesByPage; readonly developing: boolean },
): string {
  const known = Object.hasOwn(hashes, path) ? hashes[path] : hashes[NOT_FOUND];
  const scripts = developing ? ["'unsafe-inline'", "'unsafe-eval'"] : (known ?? []);
  return [
    "default-src 'self'",
    ["script-src 'self'", ...scripts].join(' '),
    // Recharts and React set style attributes; a style attribute runs nothing.
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "connect-src 'self'",
    "worker-src 'self'",
    "frame-src 'none'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}
