"""What is known of a farm's cows before a visit, and the draft list that comes of it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date, time, timedelta

from django.db.models import Max

from farms.domain.cow_status import CowStatus
from farms.models import Cow
from trimops.kernel.clock import at_local, local_day
from trimops.kernel.scope import Scope
from trimops.paper.days import day_short
from visits.domain.draft_order import DraftCandidate, DraftOrder, draft_order
from visits.domain.mobility import MobilityScale, is_lame
from visits.domain.visit_states import VisitReason
from visits.models import AskedCow, DraftChange, DraftKind, MobilityScore, Trim, Visit
from visits.selectors.before_visit import blocks_before, rechecks_before, visit_day
from visits.selectors.draft_rules_in_use import RulesInUse, rules_in_use


@dataclass(frozen=True)
class GatheredDraft:
    """The cows of the farm that are not struck, as far as the rules look at them, and what people changed."""

    day: date
    using: RulesInUse
    is_routine: bool
    candidates: tuple[DraftCandidate, ...]
    changes: tuple[DraftChange, ...]

    def order(self, count: int) -> DraftOrder:
        """The list cut at that count; an urgent visit or a re-check is for what presses alone."""
        rules = self.using.rules if self.is_routine else self.using.rules.pressing_only()
        return draft_order(self.candidates, self.day, count, rules)

    @property
    def struck(self) -> list[DraftChange]:
        return [change for change in self.changes if change.kind == DraftKind.STRUCK]


@dataclass
class _Due:
    """What is due on a cow by the day."""

    words: list[str] = field(default_factory=list)
    until: date | None = None
    visits: set[int | None] = field(default_factory=set)
    """Which are to see to it; None: nobody in particular."""

    def add(self, words: str, until: date) -> None:
        """A foot, unless it was named already."""
        if not any(words in told for told in self.words):
            self.words.append(words)
        self.until = min(until, self.until or until)


@dataclass(frozen=True)
class _Score:
    scale: MobilityScale
    score: int
    words: str


@dataclass(frozen=True)
class _Known:
    """What is gathered of all cows, by their keys."""

    visit: Visit
    asked: Mapping[int, AskedCow]
    added: Mapping[int, DraftChange]
    due: Mapping[int, _Due]
    trims: Mapping[int, date]
    scores: Mapping[int, MobilityScore]


def gather_draft(visit: Visit, day: date | None = None) -> GatheredDraft:
    """As it was before the first cow of the visit, whose farm and business must be at hand. Eight queries.

    `day` stands in for the day of a visit that has no hour yet.
    """
    scope, day = Scope(visit.business_id), day or visit_day(visit)
    using = rules_in_use(visit.farm)
    changes = DraftChange.objects.within(scope).filter(visit=visit).select_related("cow", "by")
    struck = {change.cow_id for change in changes if change.kind == DraftKind.STRUCK}
    known = _Known(
        visit,
        {row.cow_id: row for row in AskedCow.objects.within(scope).filter(visit=visit)},
        {change.cow_id: change for change in changes if change.kind == DraftKind.ADDED},
        _due(scope, visit, day),
        _last_trims(scope, visit, day),
        _scores(scope, visit, day, using.rules.score_counts),
    )
    cows = Cow.objects.within(scope).on_farm().filter(farm_id=visit.farm_id)
    candidates = tuple(_candidate(cow, known) for cow in cows if cow.pk not in struck)
    is_routine = visit.reason == VisitReason.ROUTINE
    return GatheredDraft(day, using, is_routine, candidates, tuple(changes))


def _due(scope: Scope, visit: Visit, day: date) -> dict[int, _Due]:
    found: dict[int, _Due] = {}
    for recheck in rechecks_before(scope, visit).filter(due_from__lte=day).select_related("visit"):
        due = found.setdefault(recheck.cow_id, _Due())
        due.visits.add(recheck.visit_id if recheck.visit and not recheck.visit.is_closed else None)
        due.add(f"{recheck.get_foot_display()}: {recheck.what}", recheck.due_until)
    for block in blocks_before(scope, visit).filter(off_due__lte=day):
        due = found.setdefault(block.cow_id, _Due())
        words = f"{block.get_kind_display()} on {block.get_claw_display()}"
        due.add(f"{block.get_foot_display()}: {words}", block.off_due)
    return found


def _last_trims(scope: Scope, visit: Visit, day: date) -> dict[int, date]:
    """The day of each cow's last trim before the visit."""
    zone = visit.business.zone
    until = at_local(day + timedelta(days=1), time(0), zone)
    trims = Trim.objects.within(scope).filter(visit__farm_id=visit.farm_id, recorded_at__lt=until)
    rows = trims.exclude(visit=visit).values_list("cow_id").order_by()
    return {cow: local_day(last, zone) for cow, last in rows.annotate(last=Max("recorded_at"))}


def _scores(scope: Scope, visit: Visit, day: date, counts: int) -> dict[int, MobilityScore]:
    """Each cow's last score that is not too old."""
    rows = MobilityScore.objects.within(scope).filter(
        scoring__farm_id=visit.farm_id,
        scoring__scored_on__lte=day,
        scoring__scored_on__gte=day - timedelta(days=counts),
    )
    return {row.cow_id: row for row in rows.select_related("scoring").order_by("scoring__scored_on", "pk")}


def _candidate(cow: Cow, known: _Known) -> DraftCandidate:
    asked, added = known.asked.get(cow.pk), known.added.get(cow.pk)
    due, last = known.due.get(cow.pk, _Due()), known.trims.get(cow.pk)
    told = tuple(_said(asked)) if asked else ()
    score = _score(cow, known, last)
    return DraftCandidate(
        cow_id=cow.pk,
        number=cow.number,
        scale=score.scale if score else None,
        score=score.score if score else None,
        score_words=score.words if score else "",
        due_words=tuple(due.words),
        due_until=due.until,
        due_elsewhere=bool(due.visits) and not due.visits & {None, known.visit.pk},
        is_asked=asked is not None or added is not None,
        asked_words=(*told, *([_added(added)] if added else [])),
        is_heifer=cow.status == CowStatus.HEIFER,
        calved_on=cow.calved_on,
        calving_due=cow.calving_due,
        dry_off_due=cow.dry_off_due,
        last_trim=last,
        known_since=min((day for day in (cow.entered_on, cow.calved_on) if day), default=None),
    )


def _said(asked: AskedCow) -> Iterable[str]:
    if asked.why:
        yield asked.why
    if asked.lame_since:
        yield f"lame since {day_short(asked.lame_since)}"


def _added(change: DraftChange) -> str:
    return f"added by {change.by}{f': {change.why}' if change.why else ''}"


def _score(cow: Cow, known: _Known, last_trim: date | None) -> _Score | None:
    """Of what was told when she was asked for and her last score the lame one, else what there is.

    A score of the day of her last trim or before counts no more: it is what she was trimmed for, or the trim itself.
    """
    found = list(_told_scores(cow, known))
    row = known.scores.get(cow.pk)
    if row is not None and (last_trim is None or row.scoring.scored_on > last_trim):
        scale = MobilityScale(row.scoring.scale)
        words = f"{scale.label}: {row.score} on {day_short(row.scoring.scored_on)}"
        found.append(_Score(scale, row.score, words))
    return next((each for each in found if is_lame(each.scale, each.score)), found[0] if found else None)


def _told_scores(cow: Cow, known: _Known) -> Iterable[_Score]:
    """Her own; on an urgent visit without one, the worst that the farm told of the cows it named."""
    asked = known.asked.get(cow.pk)
    if asked is None:
        return
    told: list[AskedCow | Visit] = [asked]
    if known.visit.reason == VisitReason.URGENT:
        told.append(known.visit)
    for row in told:
        if row.mobility_scale and row.mobility_score is not None:
            scale = MobilityScale(row.mobility_scale)
            yield _Score(scale, row.mobility_score, f"{scale.label}: {row.mobility_score}")
            return
