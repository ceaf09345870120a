/* The outdoor theme, switched from the phone page: same memory and same effect as the button of the other pages. */

const KEY = "trimops-theme"; // as in trimops/theme.js, which dresses the page before it is drawn

/** @returns {boolean} whether black on white is worn now */
export function isOutdoor() {
  return document.documentElement.dataset.theme === "outdoor";
}

/** @param {boolean} outdoor */
export function wearOutdoor(outdoor) {
  const theme = outdoor ? "outdoor" : "light";
  document.documentElement.dataset.theme = theme;
  for (const button of document.querySelectorAll("[data-theme-button]")) {
    button.setAttribute("aria-pressed", String(outdoor));
  }
  try {
    localStorage.setItem(KEY, theme);
  } catch {
    /* storage closed: worn until the page is left */
  }
}
