"""A page and a job that break; run by tests/running/test_error_reports.py with TRIMOPS_ERRORS_DSN set."""

import logging
import os
import sys

import django

os.environ["DJANGO_SETTINGS_MODULE"] = "trimops.settings.test"
django.setup()

from django.conf import settings  # noqa: E402
from django.test import RequestFactory  # noqa: E402

from trimops.watch.job_lines import job_logged  # noqa: E402

# Handed over, because the lines of this file are told with the traceback.
SECRET, PASSWORD, COOKIE, FARM, ADDRESS = sys.argv[1:]

settings.SESSION_ENGINE = "django.contrib.sessions.backends.signed_cookies"
settings.ROOT_URLCONF = "tests.running.fault_urls"

# Made with the settings as they are by now.
from trimops.wsgi import application  # noqa: E402


def page_breaks() -> None:
    """As a web server would hand the request over."""
    asked = RequestFactory().post(
        f"/bill/{SECRET}/?password={PASSWORD}",
        {"password": PASSWORD, "farm": FARM, "address": ADDRESS},
        headers={
            "Authorization": f"Bearer {PASSWORD}",
            "Referer": f"https://trimops.example/bill/{SECRET}/",
            "Cookie": f"sessionid={COOKIE}",
        },
    )
    said = []
    answer = application(asked.environ, lambda status, headers, fault=None: said.append(status))
    list(answer)
    answer.close()
    assert said == ["500 Internal Server Error"], said


def job_breaks() -> None:
    with job_logged("visits.plan_week", 7):
        try:
            raise RuntimeError(f"the job broke at /bill/{SECRET}/")
        except RuntimeError:
            logging.getLogger("trimops.errands").exception("failed: %s", f"/bill/{SECRET}/")


page_breaks()
job_breaks()
