"""The re-checks and blocks of the history as rows; what ends after today is open still."""

from datetime import date

from farms.models import Cow, Farm
from trimops.portal.demo.past import BlockSpell, Past, RecheckSpell, SeenKey
from visits.domain.visit_states import VisitState
from visits.models import Block, Recheck, Trim, Visit

BATCH = 900


def build_open_feet(
    past: Past,
    farms: list[Farm],
    herds: list[list[Cow]],
    visits: list[Visit],
    trims: dict[SeenKey, Trim],
    today: date,
) -> None:
    """Re-checks hang on the visit that saw to them, or on the confirmed one that will."""
    booked = {
        (p.farm, cow): visit
        for p, visit in zip(past.visits, visits, strict=True)
        for cow, _ in p.asked
        if visit.state == VisitState.CONFIRMED
    }
    rechecks = [
        _recheck(spell, farms[spell.farm], herds[spell.farm][spell.cow], trims) for spell in past.rechecks
    ]
    for row, spell in zip(rechecks, past.rechecks, strict=True):
        if row.closed_on is None or row.closed_on > today:
            row.closed_on, row.closed_because = None, ""
            row.visit = booked.get((spell.farm, spell.cow))
    Recheck.objects.bulk_create(rechecks, batch_size=BATCH)
    Block.objects.bulk_create(
        [_block(spell, herds[spell.farm][spell.cow], trims) for spell in past.blocks], batch_size=BATCH
    )


def _recheck(spell: RecheckSpell, farm: Farm, cow: Cow, trims: dict[SeenKey, Trim]) -> Recheck:
    closing = trims[spell.closed_by] if spell.closed_by else None
    return Recheck(
        business_id=farm.business_id,
        farm=farm,
        cow=cow,
        foot=spell.due.foot.value,
        cause=spell.due.cause.value,
        what=spell.due.what[:120],
        due_from=spell.due.due_from,
        due_until=spell.due.due_until,
        from_trim=trims[spell.opened_by],
        visit=closing.visit if closing else None,
        closed_on=spell.closed_on,
        closed_by_trim=closing,
        closed_because=spell.closed_because,
    )


def _block(spell: BlockSpell, cow: Cow, trims: dict[SeenKey, Trim]) -> Block:
    return Block(
        business_id=cow.business_id,
        cow=cow,
        foot=spell.foot.value,
        claw=spell.claw.value,
        kind=spell.kind.value,
        put_on_by=trims[spell.put_on_by],
        put_on=spell.put_on,
        off_due=spell.off_due,
        off_on=spell.off_on,
        off_by=trims[spell.off_by] if spell.off_by else None,
    )
