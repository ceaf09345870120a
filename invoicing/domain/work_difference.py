"""Which work is billed already, which is not, and which was billed but is no longer there."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from invoicing.domain.visit_work import WorkPiece


@dataclass(frozen=True)
class Claim:
    """A piece of work that a line holds, or that was left unbilled (`line_id` None)."""

    claim_id: int
    key: str
    trim_id: int | None = None
    line_id: int | None = None


@dataclass(frozen=True)
class WorkDifference:
    """`added`: pieces that nothing holds. `gone`: claims whose work is no longer there."""

    added: tuple[WorkPiece, ...] = ()
    gone: tuple[Claim, ...] = ()

    def __bool__(self) -> bool:
        return bool(self.added or self.gone)


def work_difference(pieces: Iterable[WorkPiece], claims: Sequence[Claim]) -> WorkDifference:
    """Compare by key; then, what is left, by cow at the crush and what was done.

    Two phones that put down the same cow agree on one of their two ids only later, so the id within a key may change
    although the work is the same. Another kind of trim is not the same work: one piece goes, one is added.
    """
    held = {claim.key: claim for claim in claims}
    unheld = [piece for piece in pieces if held.pop(piece.key, None) is None]
    same: dict[tuple[int | None, str], str] = {
        (claim.trim_id, _act(claim.key)): claim.key for claim in held.values() if claim.trim_id
    }
    added = []
    for piece in unheld:
        key = same.pop((piece.trim_id, _act(piece.key)), None)
        if key is None:
            added.append(piece)
        else:
            del held[key]
    return WorkDifference(tuple(added), tuple(held.values()))


def taken_keys(pieces: Sequence[WorkPiece], claims: Sequence[Claim]) -> frozenset[str]:
    """Keys of those of the pieces that the claims hold, under this key or an older one."""
    free = {piece.key for piece in work_difference(pieces, claims).added}
    return frozenset(piece.key for piece in pieces) - free


def _act(key: str) -> str:
    """A key without the id in it: trim/<id>/LH/block/medial gives LH/block/medial."""
    return "/".join(key.split("/")[2:])
