/* A form on a slow line is sent once, however often the button is pressed. */
const SENT = "data-sent";

document.addEventListener("submit", (event) => {
  const form = event.target;
  // What answers with a file leaves the page where it is: it may be pressed again.
  if (form.method !== "post" || form.hasAttribute("data-gives-file")) return;
  if (form.hasAttribute(SENT)) {
    event.preventDefault();
    return;
  }
  form.setAttribute(SENT, "");
  event.submitter?.setAttribute("aria-disabled", "true");
});

// Coming back with the browser's back button shows the page as it was left: let the form be sent again.
window.addEventListener("pageshow", () => {
  for (const form of document.querySelectorAll(`form[${SENT}]`)) {
    form.removeAttribute(SENT);
    for (const button of form.querySelectorAll("[aria-disabled]")) button.removeAttribute("aria-disabled");
  }
});
