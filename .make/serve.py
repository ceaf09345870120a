"""`make serve`: the embedded form (SQLite, jobs in the process) in one foreground process."""

import os
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from parts import as_program, run_together, web_server

PORT = os.environ["PORT"]
MANAGE = [sys.executable, "manage.py"]


def main() -> int:
    env = {**os.environ, "PYTHONUNBUFFERED": "1", "DJANGO_SETTINGS_MODULE": "trimops.settings.base"}
    env.setdefault("TRIMOPS_SITE", f"http://127.0.0.1:{PORT}")
    Path("static-collected").mkdir(exist_ok=True)
    subprocess.run([*MANAGE, "migrate", "--verbosity", "0"], check=True, env=env)
    subprocess.run([*MANAGE, "demo_signins", "--site", f"http://127.0.0.1:{PORT}"], check=False, env=env)
    print(f"\ntrimops: open http://127.0.0.1:{PORT}/   (Ctrl-C stops it)", flush=True)
    # One process, since jobs and sign-in limits live in it; threads let a page load while another waits.
    env |= {"WEB_WORKERS": "1", "WEB_THREADS": "8", "WEB_LOG_LEVEL": "WARNING"}
    with TemporaryDirectory(prefix="trimops-figures-") as figures:
        env.setdefault("PROMETHEUS_MULTIPROC_DIR", figures)
        return run_together({"web": web_server(), "timetable": [*MANAGE, "run_schedule"]}, env)


if __name__ == "__main__":
    as_program(main)
