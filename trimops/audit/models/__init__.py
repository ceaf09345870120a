from trimops.audit.models.audit_cut import AuditCut
from trimops.audit.models.audit_entry import AuditEntry
from trimops.audit.models.audit_seal import AuditSeal

__all__ = ["AuditCut", "AuditEntry", "AuditSeal"]
