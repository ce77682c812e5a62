'use client';

import { WentWrong } from '@/components/shell/went-wrong';

/** For faults in the frame around the pages, which leaves its styles there. */
export default function GlobalErrorPage({ error, retry }: { error: unknown; retry: () => void }) {
  return (
    <html lang="en">
      <body>
        <title>Heavy Air: something broke</title>
        <WentWrong error={error} retry={retry} />
      </body>
    </html>
  );
}
