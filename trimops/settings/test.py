"""What tests change: quick hashing, mail in memory, jobs in place, data in a folder of their own."""

import os
import tempfile

os.environ.setdefault("TRIMOPS_DATA_DIR", tempfile.mkdtemp(prefix="trimops-test-"))
os.environ.setdefault("TRIMOPS_SECRET_KEY", "only-for-tests-" + "x" * 50)

from trimops.settings.base import *  # noqa: F403

DEBUG = False
PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
EMAIL_BACKEND = "django.core.mail.backends.locmem.EmailBackend"
JOBS_RUN_APART = False
ALLOWED_HOSTS = ["*"]
# No folder of collected files to warn about: they are served from where they lie.
WHITENOISE_AUTOREFRESH = True
