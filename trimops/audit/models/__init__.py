from trimops.audit.models.audit_entry import AuditEntry
from trimops.audit.models.audit_seal import AuditSeal

__all__ = ["AuditEntry", "AuditSeal"]
