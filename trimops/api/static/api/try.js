// Swagger UI over our own description. Nothing is kept in the browser; a change is signed with the page's own word, and
// each call has a key of its own, so that nobody has to think of one: who wants the same call twice types theirs.
const home = document.getElementById('try');
const word = home.querySelector('[name=csrfmiddlewaretoken]').value;
const wait = home.querySelector('[data-wait]');
const answer = await fetch(home.dataset.description).catch(() => null);
if (!answer?.ok) {
  wait.textContent = 'The list of addresses could not be read. Open the page again in a moment.';
  throw new Error('no description');
}
const said = await answer.json();
Object.assign(said.components.parameters.IdempotencyKey, {
  required: false,
  description: 'Left empty, the page makes one for each call.',
});
const place = document.createElement('div');
home.append(place);
wait.remove();

window.SwaggerUIBundle({
  spec: said,
  domNode: place,
  presets: [window.SwaggerUIBundle.presets.apis],
  layout: 'BaseLayout',
  docExpansion: 'none',
  defaultModelsExpandDepth: -1,
  filter: true,
  validatorUrl: null,
  syntaxHighlight: false,
  persistAuthorization: false,
  requestInterceptor(request) {
    if (request.method === 'GET') return request;
    request.headers['X-CSRFToken'] = word;
    request.headers['Idempotency-Key'] ||= newKey();
    return request;
  },
});

function newKey() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (each) => each.toString(16).padStart(2, '0')).join('');
}

// The page has its own main part: what the library calls so is a part of that. And what can be scrolled or written in
// can be reached by keys and has a name.
new MutationObserver(() => {
  for (const inner of place.querySelectorAll('main:not([role])')) {
    inner.setAttribute('role', 'group');
    inner.setAttribute('aria-label', 'Addresses');
  }
  for (const text of place.querySelectorAll('pre:not([tabindex])')) text.tabIndex = 0;
  for (const box of place.querySelectorAll('textarea:not([aria-label])')) box.setAttribute('aria-label', 'The body');
}).observe(place, { childList: true, subtree: true });
