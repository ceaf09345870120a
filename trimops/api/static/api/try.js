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
  persistAuthorization: false,
  requestInterceptor(request) {
    if (!request.loadSpec && request.method !== 'GET') request.headers['X-CSRFToken'] = word;
    return request;
  },
});
