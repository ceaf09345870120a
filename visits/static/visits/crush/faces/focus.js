/* The focus is put by hand where a redraw has taken away what had it. */

/** @param {string} id */
export function focusOn(id) {
  document.getElementById(id)?.focus();
}
