/** Goes to a view or a form of this page; the back key leaves it again. */
export function show(view: string): void {
  window.location.hash = view === '' ? 'briefing' : view;
}
