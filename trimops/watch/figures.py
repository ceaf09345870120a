"""Figures for monitoring, counted where things happen, in the Prometheus text format. The library's one home.

With PROMETHEUS_MULTIPROC_DIR set, all processes that share that folder count into it, each in files of its own;
without, each process counts for itself, which is right for the embedded form alone (one web process).
"""

import os
import socket
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from django.conf import settings
from prometheus_client import (
    CONTENT_TYPE_LATEST,
    CollectorRegistry,
    Counter,
    Histogram,
    generate_latest,
    values,
)
from prometheus_client.core import GaugeMetricFamily
from prometheus_client.multiprocess import MultiProcessCollector
from prometheus_client.registry import Collector

CONTENT_TYPE = CONTENT_TYPE_LATEST
METHODS = frozenset({"GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"})
REQUEST_SECONDS = (0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0)
JOB_SECONDS = (0.05, 0.25, 1.0, 5.0, 15.0, 60.0, 300.0, 1500.0)


class JobOutcome(StrEnum):
    """How one try of a job ended."""

    DONE = "done"
    FAILED = "failed"
    GIVEN_UP = "given_up"


@dataclass(frozen=True)
class Gauge:
    """A figure read at the moment it is asked for."""

    name: str
    help: str
    value: float


def _who() -> str:
    """Names a process among those that share the folder; two containers may both have a process 7."""
    return f"{socket.gethostname()}-{os.getpid()}".replace("_", "-")


if settings.METRICS_FOLDER:
    values.ValueClass = values.MultiProcessValue(_who)  # type: ignore[no-untyped-call]

REGISTRY = CollectorRegistry()
REQUESTS = Counter("trimops_requests", "Requests answered", ("method", "route", "status"), registry=REGISTRY)
REQUEST_TIME = Histogram(
    "trimops_request_seconds",
    "From the request's arrival to the answer's first byte",
    ("route",),
    registry=REGISTRY,
    buckets=REQUEST_SECONDS,
)
JOBS = Counter("trimops_jobs", "Tries of jobs", ("job", "outcome"), registry=REGISTRY)
JOB_TIME = Histogram(
    "trimops_job_seconds", "One try of a job", ("job",), registry=REGISTRY, buckets=JOB_SECONDS
)


def note_request(method: str, route: str, status: int, seconds: float) -> None:
    """Count one answer. `route` is the name of the address, never the address: those are endless, and some are keys."""
    known = method if method in METHODS else "other"
    REQUESTS.labels(known, route, str(status)).inc()
    REQUEST_TIME.labels(route).observe(seconds)


def note_job(name: str, outcome: JobOutcome | str, seconds: float) -> None:
    """Count one try of a job."""
    JOBS.labels(name, str(outcome)).inc()
    JOB_TIME.labels(name).observe(seconds)


def figures_now(gauges: Callable[[], Iterable[Gauge]]) -> bytes:
    """All that was counted, and the gauges as they are now, as text."""
    registry = CollectorRegistry()
    registry.register(_ReadNow(gauges))
    if settings.METRICS_FOLDER:
        MultiProcessCollector(registry, path=settings.METRICS_FOLDER)  # type: ignore[no-untyped-call]
        return generate_latest(registry)
    return generate_latest(REGISTRY) + generate_latest(registry)


class _ReadNow(Collector):
    def __init__(self, gauges: Callable[[], Iterable[Gauge]]) -> None:
        self.gauges = gauges

    def describe(self) -> list[GaugeMetricFamily]:
        """Nothing beforehand: else the figures would be read once more when this is registered."""
        return []

    def collect(self) -> Iterator[GaugeMetricFamily]:
        for gauge in self.gauges():
            yield GaugeMetricFamily(gauge.name, gauge.help, value=gauge.value)
