/* Outdoor theme: black on white for bright sun. Remembered on this phone only. */
const KEY = "trimops-theme";
const root = document.documentElement;

function remembered() {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null; // storage is closed in some private windows: the page still works, it only forgets
  }
}

function remember(theme) {
  try {
    localStorage.setItem(KEY, theme);
  } catch {
    /* as above */
  }
}

function wear(theme) {
  root.dataset.theme = theme;
  for (const button of document.querySelectorAll("[data-theme-button]")) {
    button.setAttribute("aria-pressed", String(theme === "outdoor"));
  }
}

function wire() {
  for (const button of document.querySelectorAll("[data-theme-button]")) {
    button.hidden = false;
    button.addEventListener("click", () => {
      const theme = root.dataset.theme === "outdoor" ? "light" : "outdoor";
      remember(theme);
      wear(theme);
    });
  }
  wear(root.dataset.theme);
}

wear(remembered() === "outdoor" ? "outdoor" : "light");
if (document.readyState === "loading") {
  document.addEventListener("DOMContentLoaded", wire);
} else {
  wire();
}
