"""Each app's `tasks.py` is read, so that what is done for a job is known outside a worker as well."""

from functools import cache

from celery import current_app
from django.apps import apps


@cache
def load_tasks() -> None:
    """Import them, once in a process."""
    # Not Celery's own loading of default modules: that runs all of Django's checks each time.
    current_app.autodiscover_tasks([config.name for config in apps.get_app_configs()], force=True)
