"""What a plan made anew keeps beside it: the diary as it was, its promises, the price, and what needs a yes."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from datetime import datetime

from visits.domain.planning.compare_plans import Comparison, StoredPlan, compare_plans
from visits.domain.planning.replan.broken_promises import Document, parts
from visits.domain.planning.replan.plan_in_force import InForce, Promise
from visits.domain.planning.replan.price_of_change import PriceOfChange


@dataclass(frozen=True)
class StoredChange:
    """`asks` are jobs of confirmed visits that cannot be kept: they move only with somebody's yes. `facts` are jobs
    begun, whose hours are no proposal. `to_farms` is the reason as the farms are told it.
    """

    before: StoredPlan
    in_force: tuple[InForce, ...]
    price: PriceOfChange
    asks: tuple[str, ...] = ()
    facts: tuple[str, ...] = ()
    to_farms: str = ""

    def as_json(self) -> dict[str, object]:
        """Plain values for storing; of the old problem only what a comparison needs."""
        problem = self.before.problem
        return {
            "before": {
                "problem": {
                    "timezone": problem["timezone"],
                    "shifts": [{"id": s["id"], "crew": s["crew"]} for s in parts(problem, "shifts")],
                    "jobs": [{"id": job["id"]} for job in parts(problem, "jobs")],
                },
                "plan": self.before.plan,
            },
            "in_force": [_written(entry) for entry in self.in_force],
            "price": asdict(self.price),
            "asks": list(self.asks),
            "facts": list(self.facts),
            "to_farms": self.to_farms,
        }

    def compared(self, after: StoredPlan) -> Comparison:
        """The diary as it was against a plan."""
        return compare_plans(self.before, after, self.in_force, self.price)


def read_change(stored: Mapping[str, object]) -> StoredChange:
    """The change that `as_json` wrote."""
    before, price = _object(stored["before"]), _object(stored["price"])
    return StoredChange(
        before=StoredPlan(_object(before["problem"]), _object(before["plan"])),
        in_force=tuple(_entry(part) for part in parts(stored, "in_force")),
        price=PriceOfChange(**{key: float(str(value)) for key, value in price.items()}),
        asks=_words(stored["asks"]),
        facts=_words(stored["facts"]),
        to_farms=str(stored["to_farms"]),
    )


def _written(entry: InForce) -> dict[str, object]:
    told = entry.told.isoformat() if entry.told else None
    return {**asdict(entry), "start": entry.start.isoformat(), "told": told, "promise": entry.promise.value}


def _entry(part: Mapping[str, object]) -> InForce:
    told = part["told"]
    return InForce(
        str(part["job"]),
        str(part["shift"]),
        datetime.fromisoformat(str(part["start"])),
        Promise(str(part["promise"])),
        datetime.fromisoformat(str(told)) if told else None,
        str(part["crew"]),
    )


def _object(value: object) -> Document:
    if not isinstance(value, dict):
        raise TypeError("a stored change is spoilt")
    return value


def _words(value: object) -> tuple[str, ...]:
    return tuple(str(word) for word in value) if isinstance(value, list) else ()
