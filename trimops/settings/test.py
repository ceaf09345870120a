"""What tests change: quick hashing, mail in memory, jobs in place, data in a folder of their own."""

import atexit
import os
import shutil
import tempfile

if "TRIMOPS_DATA_DIR" not in os.environ:
    os.environ["TRIMOPS_DATA_DIR"] = tempfile.mkdtemp(prefix="trimops-test-")
    atexit.register(shutil.rmtree, os.environ["TRIMOPS_DATA_DIR"], ignore_errors=True)
# because: two test processes that shared one would take each other's heartbeat of the timetable for their own
_worker = os.environ.get("PYTEST_XDIST_WORKER", "")
if _worker and not os.environ["TRIMOPS_DATA_DIR"].endswith(f"/{_worker}"):
    os.environ["TRIMOPS_DATA_DIR"] += f"/{_worker}"
os.environ.setdefault("TRIMOPS_SECRET_KEY", "only-for-tests-" + "x" * 50)

from trimops.settings.base import *  # noqa: E402, F403

DEBUG = False
PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
EMAIL_BACKEND = "django.core.mail.backends.locmem.EmailBackend"
JOBS_RUN_APART = False
ALLOWED_HOSTS = ["*"]
# No folder of collected files to warn about: they are served from where they lie.
WHITENOISE_AUTOREFRESH = True
# A test is one machine that asks thousands of times; those of the limits set their own.
API_RATE = API_STRANGER_RATE = WRONG_LINKS_RATE = PAGE_RATE = COSTLY_RATE = 0
