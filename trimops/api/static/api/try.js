// Swagger UI over our own description. Nothing is kept in the browser; a change is signed with the page's own word.
const home = document.getElementById('try');
const word = home.querySelector('[name=csrfmiddlewaretoken]').value;
const place = document.createElement('div');
home.append(place);
home.querySelector('[data-wait]').remove();

window.SwaggerUIBundle({
  url: home.dataset.description,
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
    if (!request.loadSpec && request.method !== 'GET') request.headers['X-CSRFToken'] = word;
    return request;
  },
});

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
