"""Faults told to the server that TRIMOPS_ERRORS_DSN names, over the open envelope protocol. The library's one home.

Only what mends a fault leaves the house: the traceback's lines, the route's pattern, status of the machine. Not who
was signed in, nothing that was sent or asked for, no values of variables, no cookies, no link that opens something,
no mail address.
"""

import logging
import re
from typing import cast

import sentry_sdk
from sentry_sdk.integrations.atexit import AtexitIntegration
from sentry_sdk.integrations.celery import CeleryIntegration
from sentry_sdk.integrations.dedupe import DedupeIntegration
from sentry_sdk.integrations.django import DjangoIntegration
from sentry_sdk.integrations.excepthook import ExcepthookIntegration
from sentry_sdk.integrations.logging import LoggingIntegration
from sentry_sdk.types import Event, Hint

from trimops.settings.hide_secrets import hide_secrets
from trimops.watch.marks import marks

# PostgreSQL tells the values of the row that it refused.
ROW_TOLD = re.compile(r"DETAIL:.*", re.DOTALL)
MAIL_ADDRESS = re.compile(r"[\w.+-]+@[\w-]+\.[\w.-]+")
# What may stay of a request: how it was asked, and by which kind of client.
KEPT_OF_REQUEST = ("method",)
LEFT_OUT = frozenset({"request", "user", "extra", "breadcrumbs"})


def begin_reports(dsn: str) -> None:
    """Tell faults to `dsn` from now on. sentry_sdk's BadDsn where it is none."""
    sentry_sdk.init(
        dsn=dsn,
        send_default_pii=False,
        max_request_body_size="never",
        include_local_variables=False,
        # Steps before the fault are queries and log lines, with what was in them.
        max_breadcrumbs=0,
        auto_session_tracking=False,
        send_client_reports=False,
        default_integrations=False,
        auto_enabling_integrations=False,
        integrations=[
            DjangoIntegration(transaction_style="url"),
            CeleryIntegration(),
            # An errand that failed is caught and logged, and is a fault all the same.
            LoggingIntegration(level=None, event_level=logging.ERROR),
            DedupeIntegration(),
            ExcepthookIntegration(),
            AtexitIntegration(callback=_say_nothing),
        ],
        before_send=_without_secrets,
    )


def _say_nothing(pending: int, timeout: float) -> None:
    """What waits to be told at the end of a process is told without a word on the terminal."""


def _without_secrets(event: Event, hint: Hint) -> Event:
    request = event.get("request", {})
    kept = {name: value for name, value in event.items() if name not in LEFT_OUT}
    kept["request"] = {name: request[name] for name in KEPT_OF_REQUEST if name in request}
    kept["tags"] = {**event.get("tags", {}), **marks()}
    return cast(Event, _hidden(kept))


def _hidden(value: object) -> object:
    """The same with tokens and mail addresses hidden in every text of it."""
    if isinstance(value, str):
        return MAIL_ADDRESS.sub("...", ROW_TOLD.sub("DETAIL: ...", hide_secrets(value)))
    if isinstance(value, dict):
        return {name: _hidden(each) for name, each in value.items()}
    if isinstance(value, list | tuple):
        return [_hidden(each) for each in value]
    return value
