"""Every hash of a business's trail is worked out again."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import islice

from trimops.audit.domain.digests import content_digest, entry_digest, next_link
from trimops.audit.heads_file import KeptHead
from trimops.audit.models import AuditCut, AuditEntry, AuditSeal
from trimops.audit.selectors.audit_heads import unsealed_since
from trimops.audit.selectors.verify_cuts import verify_cuts
from trimops.kernel.scope import Scope

AT_ONCE = 1_000


@dataclass
class Verdict:
    """What was found: entries under a seal, blotted ones among them, entries that wait for theirs, how many were cut
    with the last cut, and each fault in words with its position (0: it has none).
    """

    sealed: int = 0
    blotted: int = 0
    waiting: int = 0
    cut: int = 0
    last_cut: AuditCut | None = None
    chain: str = ""
    faults: list[tuple[int, str]] = field(default_factory=list)


def verify_chain(scope: Scope, kept: list[KeptHead]) -> Verdict:
    """The whole trail of a business, held against its ends that were kept elsewhere."""
    start = verify_cuts(scope, kept)
    verdict = Verdict(cut=start.position, last_cut=start.last, faults=list(start.faults))
    known = {head.position: head for head in kept if head.business == scope.business_id}
    chain, position = start.chain, start.position
    for seal, entry in _links(scope):
        position += 1
        if seal.position != position:
            verdict.faults.append((position, f"no seal here; the next one is {seal.position}"))
            position = seal.position
        fault = _fault_of(entry, verdict)
        chain = next_link(chain, entry.digest if entry else "")
        if not fault and seal.chain != chain:
            fault = "its seal does not follow from the one before it"
        if not fault and position in known and known[position].chain != seal.chain:
            fault = f"the chain is not the one that was kept on {known[position].at[:10]}: it was made anew"
        if fault:
            verdict.faults.append((position, fault))
        # because: what comes after one fault is held against what stands there, so that the next fault is found too
        chain, verdict.sealed = seal.chain, verdict.sealed + 1
    verdict.chain = chain if position else ""
    verdict.faults += _cut(position, known)
    _look_at_waiting(scope, verdict)
    return verdict


def _links(scope: Scope) -> Iterator[tuple[AuditSeal, AuditEntry | None]]:
    """Each seal with its entry; None where that is gone."""
    seals = AuditSeal.objects.within(scope).order_by("position").iterator(chunk_size=AT_ONCE)
    while batch := list(islice(seals, AT_ONCE)):
        entries = AuditEntry.objects.within(scope).in_bulk([seal.entry_id for seal in batch])
        for seal in batch:
            yield seal, entries.get(seal.entry_id)


def _fault_of(entry: AuditEntry | None, verdict: Verdict) -> str:
    if entry is None:
        return "the entry was taken out"
    if entry.blotted_at is None:
        if content_digest(entry.held) != entry.content:
            return f"entry {entry.pk}: what it says of before, after or where from was changed"
    else:
        verdict.blotted += 1
    if entry_digest(entry.facts) != entry.digest:
        return f"entry {entry.pk}: it was changed"
    return ""


def _cut(last: int, known: dict[int, KeptHead]) -> list[tuple[int, str]]:
    """The end was cut off where a kept end lies beyond it."""
    beyond = [head for position, head in known.items() if position > last]
    if not beyond:
        return []
    head = max(beyond, key=lambda each: each.position)
    return [(last + 1, f"the end was cut off: on {head.at[:10]} it went on to {head.position}")]


def _look_at_waiting(scope: Scope, verdict: Verdict) -> None:
    """Those without a seal: written since the last sealing, or put in some other way."""
    since = unsealed_since(scope)
    for entry in AuditEntry.objects.within(scope).filter(seal=None).iterator(chunk_size=AT_ONCE):
        verdict.waiting += 1
        fault = _fault_of(entry, verdict)
        if not fault and entry.at < since:
            fault = f"entry {entry.pk}: of {entry.at:%Y-%m-%d}, and was never sealed: it was put in some other way"
        if fault:
            verdict.faults.append((0, fault))
