"""How many random examples a test tries: all of them in `make hunt`, a third (never below twenty) in `make test`."""

import os

# In `make long` and `make bench`: whole where `make test` takes a part.
HAS_TIME = os.environ.get("TRIMOPS_LONG", "0") == "1"
IS_HUNT = os.environ.get("TRIMOPS_HUNT", "0") == "1"


def examples(count: int) -> int:
    """So many of `count`, for `@settings(max_examples=...)`."""
    return count if IS_HUNT else max(20, count // 3)
