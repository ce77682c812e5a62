import type { Metadata } from 'next';
import { BoardPage } from '@/components/board/board-page';

export const metadata: Metadata = { title: 'Board · Heavy Air' };

export default function Page() {
  return <BoardPage />;
}
