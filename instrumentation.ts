/** Called once when a server starts: boards posted before are watched again. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { startBoards } = await import('@/app/api/_boards/server-boards');
  startBoards();
}
