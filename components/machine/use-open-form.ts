'use client';

import { usePathname, useSearchParams } from 'next/navigation';

type OpenForm = {
  /** The id of the record whose form is open, `new`, or null for the list. */
  readonly open: string | null;
  readonly show: (id: string) => void;
  readonly close: () => void;
};

/** Which form is open stands in the address, so that a reload and the back key do what they should. */
export function useOpenForm(): OpenForm {
  const path = usePathname();
  const open = useSearchParams().get('edit');
  return {
    open,
    show: (id) => window.history.pushState(null, '', `${path}?edit=${encodeURIComponent(id)}`),
    close: () => {
      // A form may end after another was opened: that one stays.
      if (new URLSearchParams(window.location.search).get('edit') === open)
        window.history.replaceState(null, '', path);
    },
  };
}
