/** Called once when a server starts: boards posted before are watched again, and our server learns what it may answer itself. */
export async function register(): Promise<void> {
  if (process.env.NEXT_RUNTIME !== 'nodejs') return;
  const { startBoards } = await import('@/app/api/_boards/server-boards');
  startBoards();
  const served = (await import('@/app/api/_serve/served-process')).servedProcess();
  if (served === null) return;
  served.straight = (await import('@/app/api/_serve/straight-routes')).STRAIGHT_ROUTES;
}
