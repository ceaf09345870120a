"""`python .make/probe.py ADDRESS`: ends with 0 where it answers 200, else with 1 and what it said."""

import sys
import urllib.error
import urllib.request

try:
    with urllib.request.urlopen(sys.argv[1], timeout=8) as answer:
        print(answer.read().decode())
except urllib.error.HTTPError as refused:
    sys.exit(refused.read().decode())
except OSError as fault:
    sys.exit(str(fault))
