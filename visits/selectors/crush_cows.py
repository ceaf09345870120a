"""Every cow of the farm as the phone at the crush must know her, in a fixed number of queries."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from zoneinfo import ZoneInfo

from django.db.models import Q

from farms.domain.identity_kind import IdentityKind
from farms.models import Cow, CowIdentity
from trimops.kernel.scope import Scope
from visits.models import CrushWriting, Visit
from visits.selectors.before_visit import blocks_before, rechecks_before
from visits.selectors.crush_list import ExpectedCow
from visits.selectors.crush_past import past_trims

Rows = Mapping[int, list[dict[str, object]]]
"""Rows for the wire by cow."""


def crush_cows(
    scope: Scope, visit: Visit, expected: Iterable[ExpectedCow], zone: ZoneInfo
) -> list[dict[str, object]]:
    """The cows that are on the farm, by number; `expected` are those on the list and why.

    Who was put down on this visit stays among them, whatever the desk has made of her since.
    """
    listed = {line.cow_id: line for line in expected}
    ids, blocks, rechecks = _ids(scope, visit), _blocks(scope, visit), _rechecks(scope, visit)
    last = past_trims(scope, visit, zone)
    here = Cow.objects.within(scope).on_farm().values("pk")
    done = CrushWriting.objects.within(scope).filter(visit=visit, cow__isnull=False).values("cow_id")
    cows = Cow.objects.within(scope).filter(Q(pk__in=here) | Q(pk__in=done), farm_id=visit.farm_id)
    return [
        {
            **_cow(cow, listed.get(cow.pk)),
            "ids": ids.get(cow.pk, []),
            "blocks": blocks.get(cow.pk, []),
            "rechecks": rechecks.get(cow.pk, []),
            "last": last.get(cow.pk, []),
        }
        for cow in cows
    ]


def _cow(cow: Cow, line: ExpectedCow | None) -> dict[str, object]:
    return {
        "id": cow.pk,
        "number": cow.number,
        "status": cow.status,
        "note": cow.note,
        "calving_due": cow.calving_due.isoformat() if cow.calving_due else None,
        "dry_off_due": cow.dry_off_due.isoformat() if cow.dry_off_due else None,
        "why": list(line.why) if line else [],
        "is_lame": line.is_lame if line else False,
    }


def _ids(scope: Scope, visit: Visit) -> Rows:
    rows = CowIdentity.objects.within(scope).filter(cow__farm_id=visit.farm_id)
    found: dict[int, list[dict[str, object]]] = defaultdict(list)
    for cow, kind, value in rows.values_list("cow_id", "kind", "value"):
        found[cow].append({"kind": kind, "label": IdentityKind(kind).label, "value": value})
    return found


def _blocks(scope: Scope, visit: Visit) -> Rows:
    found: dict[int, list[dict[str, object]]] = defaultdict(list)
    for block in blocks_before(scope, visit):
        found[block.cow_id].append(
            {
                "foot": block.foot,
                "claw": block.claw,
                "kind": block.kind,
                "put_on": block.put_on.isoformat(),
                "off_due": block.off_due.isoformat(),
            }
        )
    return found


def _rechecks(scope: Scope, visit: Visit) -> Rows:
    found: dict[int, list[dict[str, object]]] = defaultdict(list)
    for recheck in rechecks_before(scope, visit):
        found[recheck.cow_id].append(
            {
                "foot": recheck.foot,
                "what": recheck.what,
                "due_from": recheck.due_from.isoformat(),
                "due_until": recheck.due_until.isoformat(),
                "cause": recheck.cause,
            }
        )
    return found
