import type { Metadata, Viewport } from 'next';
import type { ReactNode } from 'react';
import { ASLEEP_ID, ASLEEP_SCRIPT, PARSER_SCRIPT } from '@/components/shell/asleep-script';
import { Frame } from '@/components/shell/frame';
import { PAPER } from '@/components/shell/paper';
import { THEME_SCRIPT } from '@/components/shell/theme';
import './globals.css';

export const metadata: Metadata = {
  title: 'Heavy Air',
  description:
    'Which jets, when: main jets for carburetted two-strokes, planned against the weather of the night.',
  icons: { icon: '/icon.svg', apple: '/apple-icon-180.png' },
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  viewportFit: 'cover',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: PAPER.day },
    { media: '(prefers-color-scheme: dark)', color: PAPER.night },
  ],
};

export default function Layout({ children }: { children: ReactNode }) {
  return (
    <html lang="en" suppressHydrationWarning>
      <head>
        {/* Nothing is painted before what follows the bar at the top: of half a bar, what comes last pushes aside what came first. */}
        <link rel="expect" href={`#${ASLEEP_ID}`} blocking="render" />
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: a constant of ours; the theme must stand before the first paint */}
        <script dangerouslySetInnerHTML={{ __html: THEME_SCRIPT }} />
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: constants of ours; they must run where nothing else does */}
        <script dangerouslySetInnerHTML={{ __html: `${PARSER_SCRIPT};${ASLEEP_SCRIPT}` }} />
      </head>
      <body>
        <Frame>{children}</Frame>
      </body>
    </html>
  );
}
