"""`python -m tests.browser.warm_site`: the site loaded once, to become a server whenever it is asked to.

Loading all pages takes seconds of a core, and the tests of the crush page start some thirty servers. Each line on the
standard input is one server as JSON (`Wanted`); the answer is the id of its process, which leads a group of its own.
"""

import ctypes
import gc
import json
import os
import signal
import sys
import traceback
from importlib import import_module
from typing import TypedDict

import django
from django.conf import settings
from gunicorn.app.wsgiapp import WSGIApplication

# As gunicorn is started at work, but for what only one machine with one phone needs.
SIZE = ("--workers", "1", "--threads", "4", "--no-control-socket")
DIE_WITH_PARENT = 1  # PR_SET_PDEATHSIG of prctl(2)


class Wanted(TypedDict):
    """Paths of its database, of its log, and of static files that take the place of ours; its port on the loopback."""

    database: str
    log: str
    later_files: str
    port: int


def main() -> None:
    django.setup()
    for module in ("trimops.urls", "trimops.wsgi", "gunicorn.workers.gthread"):
        import_module(module)
    gc.freeze()
    signal.signal(signal.SIGCHLD, signal.SIG_IGN)  # whoever has ended is gone at once
    for line in sys.stdin:
        process = os.fork()
        if process == 0:
            _become(json.loads(line))
        print(process, flush=True)


def _become(wanted: Wanted) -> None:
    ctypes.CDLL(None).prctl(DIE_WITH_PARENT, signal.SIGKILL)
    signal.signal(signal.SIGCHLD, signal.SIG_DFL)
    os.setsid()
    log = os.open(wanted["log"], os.O_WRONLY | os.O_CREAT | os.O_APPEND)
    for stream in (1, 2):
        os.dup2(log, stream)
    settings.DATABASES["default"]["NAME"] = wanted["database"]
    settings.STATICFILES_DIRS = [wanted["later_files"]]
    sys.argv = ["gunicorn", "trimops.wsgi", *SIZE, "--bind", f"127.0.0.1:{wanted['port']}"]
    try:
        WSGIApplication("%(prog)s [OPTIONS] [APP_MODULE]").run()
    except Exception:
        traceback.print_exc()
    finally:
        os._exit(0)


if __name__ == "__main__":
    main()
