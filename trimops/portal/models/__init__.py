from trimops.portal.models.retention_rules import RetentionRules

__all__ = ["RetentionRules"]
