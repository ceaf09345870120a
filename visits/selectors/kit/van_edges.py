"""The edges on the blades now, and how long each will last."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from trimops.kernel.scope import Scope
from visits.domain.kit.blade_kinds import BladeKind, BladeState, Hand, SharpenMethod
from visits.domain.kit.edge_life import EdgeLife, EdgeLives, Made, made_how
from visits.domain.kit.edge_lives import Edge
from visits.domain.kit.edge_outlook import EdgeOutlook, edge_outlook
from visits.domain.kit.grinding_plan import EdgeNow
from visits.domain.kit.kit_figures import KitFigures
from visits.models import Blade
from visits.selectors.business_figures import figures_of
from visits.selectors.kit.blade_logs import BladeLogs, blade_logs

Job = tuple[BladeKind, Hand]


@dataclass(frozen=True)
class BladeEdge:
    """A blade with the edge on it: how such an edge lasts (`life`), how one would that is ground on it tonight."""

    blade: Blade
    edge: Edge
    life: EdgeLife
    fresh: EdgeLife
    outlook: EdgeOutlook

    @property
    def job(self) -> Job:
        """Blades of one kind and hand do the same job."""
        return BladeKind(self.blade.kind), Hand(self.blade.hand)

    @property
    def may_cut(self) -> bool:
        return BladeState(self.blade.state).may_cut

    @property
    def is_counted(self) -> bool:
        """Whether its cows are held against anything: discs are not sharpened by the cow unless their edges say so."""
        return not (self.job[0].is_turned and self.life.is_practice)

    @property
    def counted_on(self) -> int:
        """Cows that a new edge on this blade is counted on for."""
        return self.outlook.cows + self.outlook.sure

    def now(self) -> EdgeNow:
        """As the grinding plan takes it."""
        return EdgeNow(self.blade.pk, self.edge.cows, self.life, self.fresh, self.outlook.is_dull)


@dataclass(frozen=True)
class KnownEdges:
    """The logs, what was learned of them, the business's figures, and the edge on each blade by its key."""

    logs: BladeLogs
    lives: EdgeLives
    figures: KitFigures
    on: Mapping[int, BladeEdge]

    @property
    def limit(self) -> float:
        """The accepted chance of going dull, 0 to 1."""
        return self.figures.dull_percent / 100

    def of_van(self, van: int | None) -> list[BladeEdge]:
        """Those of one van, or of the store, blades that do the same job together."""
        found = [edge for edge in self.on.values() if edge.blade.van_id == van]
        return sorted(found, key=lambda edge: (edge.blade.kind, edge.blade.hand, edge.blade.name))


def known_edges(scope: Scope, now: datetime, figures: KitFigures | None = None) -> KnownEdges:
    """Every blade of the business with the edge on it. Six queries, and one where the `figures` are not at hand."""
    logs, figures = blade_logs(scope, now), figures or figures_of(scope).kit
    lives = logs.lives(figures.cows_per_edge)
    usual = _usual_method([edge for edges in logs.edges.values() for edge in edges])
    on = {
        blade.pk: _on(blade, logs.edges[blade.pk], lives, usual, figures.dull_percent / 100)
        for blade in logs.blades
    }
    return KnownEdges(logs, lives, figures, on)


def _on(blade: Blade, edges: Sequence[Edge], lives: EdgeLives, usual: Made, limit: float) -> BladeEdge:
    edge, kind = edges[-1], BladeKind(blade.kind)
    life = lives.of(blade.pk, kind, made_how(edge))
    fresh = lives.of(blade.pk, kind, _usual_method(edges) or usual)
    return BladeEdge(blade, edge, life, fresh, edge_outlook(life, edge.cows, limit, is_dull=edge.is_dull))


def _usual_method(edges: Sequence[Edge]) -> SharpenMethod | None:
    """How these were sharpened at home most often; what is sent away cannot be ground tonight."""
    at_home = [edge.method for edge in edges if edge.method and edge.method is not SharpenMethod.SENT_AWAY]
    return max(sorted(set(at_home)), key=at_home.count, default=None)
