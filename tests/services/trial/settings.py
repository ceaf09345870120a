"""The project's settings with the trial's app, whose `tasks.py` is read last."""

from trimops.settings.base import *  # noqa: F403

INSTALLED_APPS = [*INSTALLED_APPS, "tests.services.trial"]  # noqa: F405
