"""The independent audit of a planned week: every rule and every figure again, from the two documents alone.

Nothing here is shared with the planner: own reading, own travel, own arithmetic. Import only from here.
"""

from visits.domain.planning.audit.documents import Unreadable, read_document
from visits.domain.planning.audit.week_audit import audit_week

__all__ = ["Unreadable", "audit_week", "read_document"]
