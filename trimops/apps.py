"""The project as a Django app: it holds the project-wide commands and loads Celery when Django is ready."""

import importlib

from django.apps import AppConfig


class TrimopsConfig(AppConfig):
    name = "trimops"

    def ready(self) -> None:
        # Not in trimops/__init__.py: the pure packages below it must import without Celery.
        importlib.import_module("trimops.celery")
