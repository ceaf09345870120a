/* What a passkey did not do, said in words: the library's scripts only tell the console. */

const WORDS = {
  NotAllowedError: "The passkey was not used: it was left, took too long, or this device has none for here. Try again.",
  InvalidStateError: "This device has a passkey of yours already.",
  SecurityError: "Passkeys work at a secured address (https) alone, or on the machine itself (localhost).",
  NotSupportedError: "This browser cannot make such a passkey.",
};
const OTHERWISE = "The passkey did not work here. Use your password or a code instead.";

document.addEventListener("allauth.error", (event) => {
  const place = document.querySelector("[data-passkey-trouble]");
  if (!place) return;
  event.preventDefault();
  place.textContent = window.PublicKeyCredential ? (WORDS[event.detail.exception?.name] ?? OTHERWISE) : WORDS.SecurityError;
  place.hidden = false;
});
