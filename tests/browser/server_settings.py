"""The test settings, for a server of its own that may stand for a later version of the site."""

import os

from trimops.settings.test import *  # noqa: F403

# A file here takes the place of the file of that path.
if "TRIMOPS_LATER_FILES" in os.environ:
    STATICFILES_DIRS = [os.environ["TRIMOPS_LATER_FILES"]]
