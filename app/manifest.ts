import type { MetadataRoute } from 'next';
import { PAPER } from '@/components/shell/paper';

export default function manifest(): MetadataRoute.Manifest {
  return {
    name: 'Heavy Air',
    short_name: 'Heavy Air',
    description: 'Which jets, when: main jets for carburetted two-strokes, planned against the weather.',
    start_url: '/',
    scope: '/',
    display: 'standalone',
    background_color: PAPER.day,
    theme_color: PAPER.night,
    icons: [
      { src: '/icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: '/icon-512.png', sizes: '512x512', type: 'image/png' },
      { src: '/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
      { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' },
    ],
  };
}
