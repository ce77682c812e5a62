/** jsdom knows no modal dialogs; that one opens and shuts is all that tests outside a browser need. */
export function knowModalDialogs(): void {
  HTMLDialogElement.prototype.showModal = function showModal() {
    this.open = true;
  };
  HTMLDialogElement.prototype.close = function close() {
    this.open = false;
  };
}
