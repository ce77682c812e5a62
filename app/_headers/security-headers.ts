type Header = { readonly key: string; readonly value: string };

/** For every answer, whoever gives it: a page, the API, a redirect, a refusal before either is asked. */
export const SECURITY_HEADERS: readonly Header[] = [
  { key: 'x-content-type-options', value: 'nosniff' },
  { key: 'x-frame-options', value: 'DENY' },
  // Nobody outside needs to know which page, or which server of somebody's own, a link was followed from.
  { key: 'referrer-policy', value: 'same-origin' },
  {
    key: 'permissions-policy',
    value:
      'geolocation=(self), camera=(), microphone=(), payment=(), usb=(), serial=(), hid=(), midi=(), display-capture=()',
  },
  { key: 'cross-origin-opener-policy', value: 'same-origin' },
  { key: 'cross-origin-resource-policy', value: 'same-origin' },
];

function policyOf(...directives: readonly string[]): readonly Header[] {
  return [
    {
      key: 'content-security-policy',
      value: [...directives, "object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'"].join('; '),
    },
  ];
}

/** Answers that are no page: shown by themselves they may run, load and send nothing. */
export const DATA_POLICY: readonly Header[] = policyOf("default-src 'none'", "form-action 'none'", 'sandbox');
/** Scripts and styles; a policy of theirs counts only where one is started as a worker. */
export const ASSET_POLICY: readonly Header[] = policyOf("default-src 'self'");
