"""Where a trail begins after its oldest part was cut, and whether it was cut as the rules say."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime

from trimops.audit.domain.canonical import canonical
from trimops.audit.domain.cut_line import LEAST_YEARS, cut_line
from trimops.audit.domain.digests import first_link
from trimops.audit.domain.entry_kinds import EntryKind
from trimops.audit.heads_file import KeptHead
from trimops.audit.models import AuditCut, AuditEntry
from trimops.audit.selectors.audit_heads import WITHIN
from trimops.kernel.scope import Scope


@dataclass(frozen=True)
class Beginning:
    """The chain goes on from `position` (0: nothing was cut) with `chain`; the last cut, and what is wrong with any."""

    position: int
    chain: str
    last: AuditCut | None
    faults: tuple[tuple[int, str], ...]


def verify_cuts(scope: Scope, kept: Sequence[KeptHead]) -> Beginning:
    """All cuts of a business, held against the entries that tell of them and the ends kept elsewhere."""
    cuts = list(AuditCut.objects.within(scope).order_by("position"))
    if not cuts:
        return Beginning(0, first_link(scope.business_id), None, ())
    told = _told(scope)
    heads = [head for head in kept if head.business == scope.business_id]
    faults = [(cut.position, fault) for cut, fault in _faults(cuts, told, heads)]
    return Beginning(cuts[-1].position, cuts[-1].chain, cuts[-1], tuple(faults))


def _faults(
    cuts: Sequence[AuditCut], told: dict[int, str], heads: Sequence[KeptHead]
) -> Iterator[tuple[AuditCut, str]]:
    start = 0
    for cut in cuts:
        if cut.position - start != cut.entries:
            yield cut, f"a cut of {cut.entries} entries, but there were {cut.position - start}"
        if cut.years < LEAST_YEARS or cut.before > cut_line(cut.cut_at, cut.years):
            yield cut, f"what was cut on {cut.cut_at:%Y-%m-%d} was younger than {cut.years} years may be"
        if fault := _fault_by_entry(cut, told, cuts[-1].before) or _fault_by_heads(cut, heads):
            yield cut, fault
        start = cut.position


def _told(scope: Scope) -> dict[int, str]:
    """What the trail says of each cut, by its key."""
    rows = AuditEntry.objects.within(scope).filter(what=AuditCut._meta.label_lower)
    return dict(rows.filter(kind=EntryKind.ADDED.value).order_by("id").values_list("row_id", "after"))


def _fault_by_entry(cut: AuditCut, told: dict[int, str], gone_before: datetime) -> str:
    """A later cut may have taken the entry that told of this one."""
    values = {field.attname: getattr(cut, field.attname) for field in AuditCut._meta.concrete_fields}
    if cut.pk in told:
        return (
            "" if told[cut.pk] == canonical(values) else "the cut was changed: the trail says otherwise of it"
        )
    return "" if cut.cut_at < gone_before else "a cut of which the trail knows nothing"


def _fault_by_heads(cut: AuditCut, heads: Sequence[KeptHead]) -> str:
    """What came after a kept end was written later than `WITHIN` before it was kept."""
    for head in heads:
        if head.position == cut.position and head.chain != cut.chain:
            return f"the chain is not the one that was kept on {head.at[:10]}: it was made anew"
        if head.position < cut.position and head.moment - WITHIN >= cut.before:
            return (
                f"what was cut was younger than it says: on {head.at[:10]} the trail ended at {head.position}"
            )
    return ""
