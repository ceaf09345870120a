"""Settings of tests/running/test_server.py: as deployed, with the collected files in a folder of the test's own."""

from trimops.settings.base import *  # noqa: F403
from trimops.settings.base import DATA_DIR

STATIC_ROOT = DATA_DIR / "static-collected"
