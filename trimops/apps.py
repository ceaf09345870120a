"""The project as a Django app: it holds the project-wide commands and loads Celery when Django is ready."""

import importlib
import importlib.util

from django.apps import AppConfig
from django.conf import settings
from django.core.exceptions import ImproperlyConfigured


class TrimopsConfig(AppConfig):
    name = "trimops"

    def ready(self) -> None:
        # Not in trimops/__init__.py: the pure packages below it must import without Celery.
        importlib.import_module("trimops.celery")
        if settings.ERRORS_DSN:
            begin_error_reports(settings.ERRORS_DSN)


def begin_error_reports(dsn: str) -> None:
    """Tell faults to `dsn`. ImproperlyConfigured, in words for whoever runs the site, where that cannot be."""
    if importlib.util.find_spec("sentry_sdk") is None:
        raise ImproperlyConfigured(
            "TRIMOPS_ERRORS_DSN is set, but what tells faults is not installed."
            " Install the extra `errors` (uv sync --extra errors), or unset TRIMOPS_ERRORS_DSN."
        )
    reports = importlib.import_module("trimops.watch.error_reports")
    try:
        reports.begin_reports(dsn)
    except ValueError as fault:
        raise ImproperlyConfigured(
            "TRIMOPS_ERRORS_DSN is no address of the kind https://key@host/number."
        ) from fault
