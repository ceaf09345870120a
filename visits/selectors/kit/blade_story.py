"""One blade: its life, its edges, the curve of its kind and way of sharpening, and what that says."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from trimops.kernel.scope import Scope
from trimops.paper.to_svg import to_svg
from visits.documents.herd.axis import ticks
from visits.documents.kit.edge_curve import CurvePoint, EdgeCurveContent, edge_curve_drawing
from visits.domain.herd.survival_curve import SurvivalCurve
from visits.domain.kit.bevel import bevel_width
from visits.domain.kit.blade_hours import BladeHours
from visits.domain.kit.blade_kinds import BladeKind, SharpenMethod
from visits.domain.kit.edge_curve import edge_curve, edge_curves, is_enough
from visits.domain.kit.edge_finding import best_method, curve_finding
from visits.domain.kit.edge_life import NEW, Made, made_how
from visits.domain.kit.edge_lives import Edge
from visits.models import Blade, BladeEvent, BladeSaid, Sharpening
from visits.selectors.kit.blade_words import Mark, edge_words, interval_words, state_mark
from visits.selectors.kit.disc_hours import disc_hours
from visits.selectors.kit.van_edges import BladeEdge, known_edges

SVG_CLASS = "kit-picture"
SHOWN_EDGES = 8


@dataclass(frozen=True)
class EdgeLine:
    """One edge with the sharpening that made it (None: it came with the blade, or nobody noted it)."""

    edge: Edge
    sharpening: Sharpening | None


@dataclass(frozen=True)
class LifeLine:
    """One thing that was said of the blade: when, what, by whom, and more."""

    at: datetime
    what: str
    by: str
    more: str


@dataclass(frozen=True)
class BladeStory:
    """`svg` is empty where no edge went dull; `findings` are the sentences beside it."""

    edge: BladeEdge
    answer: str
    mark: Mark
    doubt: str
    hours: BladeHours | None
    svg: str
    findings: tuple[str, ...]
    edges: tuple[EdgeLine, ...]
    more_edges: tuple[EdgeLine, ...]
    life: tuple[LifeLine, ...]

    @property
    def blade(self) -> Blade:
        return self.edge.blade

    @property
    def steel(self) -> str:
        """Its thickness in mm without idle noughts, or nothing."""
        thickness = self.edge.blade.thickness_mm
        return "" if thickness is None else f"{float(thickness):g}"

    @property
    def bevel(self) -> float | None:
        """Width of the bevel in mm, where thickness and angle are known."""
        blade = self.edge.blade
        if blade.thickness_mm is None or blade.edge_angle is None:
            return None
        return bevel_width(float(blade.thickness_mm), float(blade.edge_angle))


def blade_story(scope: Scope, blade: Blade, now: datetime) -> BladeStory:
    """All of one blade. Ten queries."""
    known = known_edges(scope, now)
    on, edges = known.on[blade.pk], known.logs.edges[blade.pk]
    kind = BladeKind(blade.kind)
    alike = [edge for each in known.logs.edges.values() for edge in each if edge.kind is kind]
    lines = _edge_lines(scope, blade, edges)
    return BladeStory(
        edge=on,
        answer=f"{blade.name}: {edge_words(on) if on.may_cut else state_mark(on)[1].lower()}",
        mark=state_mark(on),
        doubt=interval_words(on),
        hours=disc_hours(known.logs, on.blade),
        svg=_curve_svg(alike, on),
        findings=_findings(alike, edges, on),
        edges=tuple(lines[:SHOWN_EDGES]),
        more_edges=tuple(lines[SHOWN_EDGES:]),
        life=_life(scope, blade),
    )


def made_words(made: Made) -> str:
    """ "from the belt", "as bought" """
    if made == NEW:
        return "as bought"
    return "made in a way not noted" if made is None else _MADE[SharpenMethod(made)]


def _edge_lines(scope: Scope, blade: Blade, edges: Sequence[Edge]) -> list[EdgeLine]:
    rows = {row.at: row for row in Sharpening.objects.within(scope).filter(blade=blade)}
    return [EdgeLine(edge, rows.get(edge.begun_at)) for edge in reversed(edges)]


def _life(scope: Scope, blade: Blade) -> tuple[LifeLine, ...]:
    """What persons said, and what broke at the crush; the newest first."""
    events = [
        LifeLine(row.at, row.get_state_display(), row.by.name if row.by else "", _why(row))
        for row in BladeEvent.objects.within(scope).filter(blade=blade).select_related("by")
    ]
    broke = BladeSaid.objects.within(scope).filter(blade=blade, part__in=("cracked", "chipped"))
    said = [
        LifeLine(row.turn.at, row.get_part_display().capitalize(), row.turn.by.name, "said at the crush")
        for row in broke.select_related("turn__by")
    ]
    return tuple(sorted([*events, *said], key=lambda line: line.at, reverse=True))


def _why(row: BladeEvent) -> str:
    fault = row.get_fault_display().lower() if row.fault and row.state != "in_use" else ""
    return ". ".join(part for part in (fault, row.note) if part)


def _findings(alike: Sequence[Edge], own: Sequence[Edge], on: BladeEdge) -> tuple[str, ...]:
    kind, made = on.job[0], made_how(on.edge)
    curves = edge_curves(alike, made_how)
    found = [
        curve_finding(
            f"the edges {made_words(made)} ({kind.label.lower()})", curves.get(made, edge_curve([]))
        ),
        curve_finding("the edges of this blade", edge_curve(own)),
        curve_finding(f"all edges of its kind ({kind.label.lower()})", edge_curve(alike)),
    ]
    medians = [
        (SharpenMethod(way).label, curve.median)
        for way, curve in curves.items()
        if way not in (NEW, None) and is_enough(curve) and curve.median
    ]
    return tuple(sentence for sentence in (*found, best_method(medians)) if sentence)


def _curve_svg(alike: Sequence[Edge], on: BladeEdge) -> str:
    """The curve of edges made like the one on the blade; where none of them went dull, of all of its kind."""
    made, kind = made_how(on.edge), on.job[0]
    wider = edge_curve(alike)
    own = edge_curve([edge for edge in alike if made_how(edge) == made])
    is_own = own.events > 0
    curve = own if is_own else wider
    if not curve.events:
        return ""
    content = EdgeCurveContent(
        points=_points(curve),
        last=curve.followed_until,
        got_there=_got_there(curve, max(curve.followed_until, wider.followed_until)),
        words=f"edges {made_words(made)}" if is_own else f"all edges: {kind.label.lower()}",
        half_by=curve.median.day if curve.median else None,
        wider=_points(wider) if is_own else (),
        wider_last=wider.followed_until,
        wider_words=f"all edges: {kind.label.lower()}",
        now=None if on.edge.is_over else on.edge.cows,
    )
    return to_svg(edge_curve_drawing(content), SVG_CLASS)


def _points(curve: SurvivalCurve) -> tuple[CurvePoint, ...]:
    steps = [CurvePoint(s.day, 100 * s.survival, 100 * s.low, 100 * s.high) for s in curve.steps]
    return (CurvePoint(0, 100, 100, 100), *steps)


def _got_there(curve: SurvivalCurve, longest: float) -> tuple[tuple[int, int], ...]:
    return tuple((int(tick), curve.at_risk(tick)) for tick in ticks(longest) if tick <= longest)


_MADE = {
    SharpenMethod.STONE: "from the stone",
    SharpenMethod.FILE: "from the file",
    SharpenMethod.BELT: "from the belt",
    SharpenMethod.WHEEL: "from the wheel",
    SharpenMethod.STROP: "from the strop",
    SharpenMethod.SENT_AWAY: "sent away to be ground",
}
