export type PageEntry = { readonly href: string; readonly label: string };

/** Every page a person can go to; one that does not exist is not promised. */
export const PAGES: readonly PageEntry[] = [
  { href: '/', label: 'Night' },
  { href: '/trail', label: 'Trail' },
  { href: '/club', label: 'Club' },
  { href: '/machines', label: 'Machines' },
  { href: '/log', label: 'Run log' },
  { href: '/compare', label: 'Compare' },
  { href: '/open', label: 'Open a link' },
  { href: '/about', label: 'How it works' },
];
