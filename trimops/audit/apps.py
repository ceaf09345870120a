from django.apps import AppConfig, apps
from django.utils.module_loading import import_string

from trimops.audit.audited import AUDITED
from trimops.tenancy.told_writes import tell_writes


class AuditConfig(AppConfig):
    """Who changed what."""

    name = "trimops.audit"
    label = "audit"

    def ready(self) -> None:
        # because: it reads models, which are not there yet when this file is read
        note_writes = import_string("trimops.audit.note_writes.note_writes")
        for label, kept in AUDITED.items():
            tell_writes(apps.get_model(label), note_writes, always=kept.always, never=sorted(kept.unread))
