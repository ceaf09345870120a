// Each drafted message gets a button that copies it, and its links carry the text as mended. Without this script the
// text can be marked and copied by hand, and the links carry it as drafted.

const SAID_FOR = 2000;

function withButton(draft) {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "act";
  button.textContent = "Copy";
  button.setAttribute("aria-describedby", draft.id);
  const said = document.createElement("span");
  said.setAttribute("role", "status");
  said.className = "small";
  button.addEventListener("click", () => copy(draft, said));
  const row = draft.parentElement.querySelector(".actions");
  row.prepend(button);
  row.append(said);
  draft.addEventListener("input", () => carry(draft, row));
}

function carry(draft, row) {
  for (const link of row.querySelectorAll('a[href^="sms:"], a[href^="mailto:"]')) {
    link.href = link.href.replace(/body=.*$/, `body=${encodeURIComponent(draft.value)}`);
  }
}

async function copy(draft, said) {
  try {
    await navigator.clipboard.writeText(draft.value);
    say(said, "Copied");
  } catch {
    // No leave to write to the clipboard: mark it, so that the reader's own keys copy it.
    draft.select();
    say(said, "Marked: copy it now");
  }
}

function say(said, words) {
  said.textContent = words;
  setTimeout(() => {
    said.textContent = "";
  }, SAID_FOR);
}

document.querySelectorAll("[data-draft]").forEach(withButton);
