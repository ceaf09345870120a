"""Faults of the database that only say: somebody else did something at the very same moment."""

import logging

from django.db import IntegrityError, OperationalError

from trimops.kernel.errors import RuleBroken

log = logging.getLogger(__name__)

# SQLSTATE of PostgreSQL (appendix A of its manual): unique_violation, exclusion_violation, serialization_failure,
# deadlock_detected. SQLite says the first in words and locks the whole file, so that it has no other.
STATES = frozenset({"23505", "23P01", "40001", "40P01"})
IN_WORDS = "UNIQUE constraint failed"


class SomebodyWasQuicker(RuleBroken):
    """Two did what only one can do, and this is the other."""

    code = "somebody_was_quicker"


def is_lost_race(fault: Exception) -> bool:
    """Whether doing it once more would meet what the other one did, and so do it or refuse it for a reason."""
    if not isinstance(fault, IntegrityError | OperationalError):
        return False
    return getattr(fault.__cause__, "sqlstate", None) in STATES or IN_WORDS in str(fault)


def lost_race(fault: Exception) -> SomebodyWasQuicker | None:
    """The refusal that such a fault amounts to; None for any other fault. All was rolled back."""
    if not is_lost_race(fault):
        return None
    # because: a rule that only the database knows looks the same, and somebody should hear of that
    log.warning("refused as somebody was quicker", exc_info=fault)
    return SomebodyWasQuicker(
        "Somebody did the same, or something that touches it, at the very same moment. Look at what is there now."
    )
