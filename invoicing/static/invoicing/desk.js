/* A key that is held down presses once: it must not run through the drafts and issue one after the other. */
document.addEventListener("keydown", (event) => {
  if (event.repeat && event.target.closest?.("[data-one-press]")) event.preventDefault();
});
