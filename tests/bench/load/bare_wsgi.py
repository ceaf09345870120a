"""The bare site for gunicorn."""

import os

from django.core.wsgi import get_wsgi_application

os.environ["DJANGO_SETTINGS_MODULE"] = "tests.bench.load.bare_site"
application = get_wsgi_application()
