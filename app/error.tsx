'use client';

import { WentWrong } from '@/components/shell/went-wrong';

export default function ErrorPage({ error, retry }: { error: unknown; retry: () => void }) {
  return <WentWrong error={error} retry={retry} />;
}
