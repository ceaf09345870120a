"""Who changed what, told to other programs."""

import json
from typing import Any

from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.asked import WholeNumber
from trimops.api.kinds import RowsApi
from trimops.api.op import Filter, Op
from trimops.api.refusals import CannotBeMeant
from trimops.api.rows import MOST_ID
from trimops.audit.domain.entry_kinds import EntryKind
from trimops.audit.models import AuditEntry
from trimops.audit.selectors.changes_of import changes_of
from trimops.tenancy.querysets import TenantQuerySet
from trimops.web.change_subjects import SUBJECTS, kinds_for


class Held(serializers.DictField):
    """Columns by name, as they were or are; a number that is not whole is a text."""

    def __init__(self, **options: Any) -> None:
        super().__init__(child=serializers.JSONField(), read_only=True, **options)

    def to_representation(self, value: Any) -> dict[str, Any]:
        return dict(json.loads(value)) if value else {}


class ChangeShown(serializers.Serializer):  # type: ignore[type-arg]
    """One row that was added, changed or taken away, or data that was handed out."""

    id = serializers.IntegerField(read_only=True)
    at = serializers.DateTimeField(read_only=True)
    by = serializers.IntegerField(
        source="by_id", read_only=True, allow_null=True, help_text="The person; null: the program by itself."
    )
    by_name = serializers.SerializerMethodField(help_text="Their name; empty for the program.")
    via = serializers.CharField(read_only=True, help_text="Which page, address, job or command.")
    seen_from = serializers.CharField(
        read_only=True, help_text="The network address; empty where none is known."
    )
    request = serializers.CharField(read_only=True, help_text="Its number in the log.")
    kind = serializers.ChoiceField([kind.value for kind in EntryKind], read_only=True)
    what = serializers.CharField(read_only=True, help_text="What kind of row.")
    row_id = serializers.IntegerField(read_only=True)
    under = serializers.CharField(read_only=True, help_text="The row that it hangs on, as kind:id.")
    before = Held(help_text="What it was, only what changed; empty where it was added.")
    after = Held(help_text="What it is; empty where it was taken away.")
    blotted_at = serializers.DateTimeField(
        read_only=True, allow_null=True, help_text="Since when what it held is erased."
    )
    digest = serializers.CharField(
        read_only=True, help_text="SHA-256 of the entry, which the chain is made of."
    )

    def get_by_name(self, row: AuditEntry) -> str:
        return str(row.by) if row.by else ""


class ChangesApi(RowsApi[AuditEntry]):
    """What was changed, the newest first: of one thing with all that hangs on it (`what` and `id`, also of one that was
    taken away since), or of all. Office and trimmers are told of what they see the changes of on pages, the owner of
    all.
    """

    model = AuditEntry
    related = ("by",)
    ops = {
        "get": Op(
            Action.SEE_CHANGES,
            "list_changes",
            "Who changed what",
            shows=ChangeShown,
            lists=True,
            orders={"newest": ("-at", "-id")},
            filters={
                "kind": Filter(serializers.ChoiceField([kind.value for kind in EntryKind]), "kind"),
                "by": Filter(WholeNumber(min_value=1, max_value=MOST_ID), "by_id"),
                "since": Filter(serializers.DateTimeField(), "at__gte"),
                "until": Filter(serializers.DateTimeField(), "at__lt"),
            },
            query={
                "what": serializers.ChoiceField(sorted(SUBJECTS), help_text="What kind of thing; needs id."),
                "id": WholeNumber(min_value=1, max_value=MOST_ID, help_text="The thing; needs what."),
            },
        ),
    }

    def rows(self) -> "TenantQuerySet[AuditEntry]":
        kinds = kinds_for(self.seat.allows)
        found: TenantQuerySet[AuditEntry] = super().rows()
        word, pk = self.asked.get("what"), self.asked.get("id")
        if (word is None) != (pk is None):
            raise CannotBeMeant(faults=[("query.what" if pk else "query.id", "Say both, or neither.")])
        if word is not None and pk is not None:
            subject = SUBJECTS[word]
            found = changes_of(self.scope, f"{subject.label}:{pk}", subject.shown_to(kinds))
        return found if kinds is None else found.filter(what__in=kinds)
