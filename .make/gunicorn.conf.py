"""The web server, for `make up`, the Procfile and the container. Each figure can be set from outside.

PORT (8000), TRIMOPS_BIND (127.0.0.1), WEB_WORKERS (2), WEB_THREADS (4), WEB_LOG_LEVEL (INFO).
"""

import os
import shutil
import tempfile

from django.urls import get_resolver

from trimops.settings.watching import logging_from

bind = f"{os.environ.get('TRIMOPS_BIND', '127.0.0.1')}:{os.environ.get('PORT', '8000')}"
workers = int(os.environ.get("WEB_WORKERS", "2"))
# A page waits for the database most of its time; threads let others be made meanwhile.
worker_class = "gthread"
threads = int(os.environ.get("WEB_THREADS", "4"))
# With threads this only tells a worker that hangs from one that works: it says so itself while pages are made.
timeout = 60
# What is being answered when a new version comes, or Ctrl-C, is answered to its end.
graceful_timeout = 30
# Longer than the proxy before it keeps a line open (60 s is usual), else it asks on one that is just being closed.
keepalive = 75
# A worker is replaced now and then, so that what leaks is small; not all at the same moment.
max_requests = 5000
max_requests_jitter = 500
# Heartbeats of workers in memory: on a disk that is slow they would be taken for dead.
worker_tmp_dir = "/dev/shm" if os.path.isdir("/dev/shm") else None
# An address as long as the longest query of the API needs, no longer (tests/standards/api/test_longest_address.py).
limit_request_line = 8190
control_socket_disable = True
# Our own line for each request (trimops.web.access_line) hides secret links; gunicorn's would not.
accesslog = None
# Faults of the server itself are written as all others are, by what hides secret links.
logconfig_dict = {
    **logging_from(
        os.environ.get("TRIMOPS_LOG_FORMAT", "plain"), os.environ.get("TRIMOPS_LOG_LEVEL", "WARNING")
    ),
}
logconfig_dict["loggers"] = {
    **logconfig_dict["loggers"],
    "gunicorn.error": {
        "level": os.environ.get("WEB_LOG_LEVEL", "INFO"),
        "handlers": ["console"],
        "propagate": False,
    },
}

_own_figures = None
if os.environ.get("TRIMOPS_METRICS_TOKEN") and not os.environ.get("PROMETHEUS_MULTIPROC_DIR"):
    # Workers count together; else each scrape would meet another one's figures.
    _own_figures = tempfile.mkdtemp(prefix="trimops-figures-")
    os.environ["PROMETHEUS_MULTIPROC_DIR"] = _own_figures


def post_worker_init(worker: object) -> None:
    """All pages are loaded before the first request, not by it: that takes some seconds."""
    _ = get_resolver().url_patterns


def on_exit(server: object) -> None:
    if _own_figures:
        shutil.rmtree(_own_figures, ignore_errors=True)
