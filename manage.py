#!/usr/bin/env python
"""Django's command line for trimops."""

import os
import sys

from django.core.management import execute_from_command_line

from trimops.watch.doing import Doing, done_by

if __name__ == "__main__":
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "trimops.settings.base")
    # The audit trail says which command it was.
    with done_by(Doing(via=f"command {' '.join(sys.argv[1:2])}")):
        execute_from_command_line(sys.argv)
