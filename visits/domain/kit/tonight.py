"""The evening's list: what is to be done before the vans go out, each line with its why and where to do it."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum


class EveningJob(StrEnum):
    """What kind of thing is to be done, in the order of the list."""

    LOAD = "load"
    GRIND = "grind"
    BROKEN = "broken"
    WASH = "wash"
    ORDER = "order"
    WARM = "warm"
    COUNT = "count"
    DATE = "date"

    @property
    def label(self) -> str:
        return _LABELS[self]


@dataclass(frozen=True)
class EveningTask:
    """One line. `name` is what it is about (van, knife, consumable), `key` its row, `number` how many things it is."""

    job: EveningJob
    name: str
    what: str
    why: str
    key: int
    number: int = 1


def in_order(tasks: Sequence[EveningTask]) -> list[EveningTask]:
    """As the list shows them."""
    jobs = list(EveningJob)
    return sorted(tasks, key=lambda task: (jobs.index(task.job), task.name))


def evening_title(tasks: Sequence[EveningTask]) -> str:
    """`Tonight: load 6 things, grind 2 edges, order Glue`, or that nothing is to be done."""
    parts = [_part(job, [task for task in tasks if task.job is job]) for job in EveningJob]
    said = [part for part in parts if part]
    return f"Tonight: {', '.join(said)}" if said else "Nothing is to be done tonight"


def _part(job: EveningJob, tasks: Sequence[EveningTask]) -> str:
    if not tasks:
        return ""
    verb, one, many = _WORDS[job]
    number = len({task.key for task in tasks}) if job in _BY_PLACE else sum(task.number for task in tasks)
    if job in _BY_NAME and len(tasks) == 1:
        return f"{verb} {tasks[0].name}"
    return f"{verb} {number} {one if number == 1 else many}"


_LABELS = {
    EveningJob.LOAD: "Load",
    EveningJob.GRIND: "Grind",
    EveningJob.BROKEN: "Broken, not to be used",
    EveningJob.WASH: "Wash down",
    EveningJob.ORDER: "Order",
    EveningJob.WARM: "Keep warm",
    EveningJob.COUNT: "Count",
    EveningJob.DATE: "Use up or throw out",
}
_WORDS = {
    EveningJob.LOAD: ("load", "thing", "things"),
    EveningJob.GRIND: ("grind", "edge", "edges"),
    EveningJob.BROKEN: ("leave out", "broken blade", "broken blades"),
    EveningJob.WASH: ("wash down", "van", "vans"),
    EveningJob.ORDER: ("order", "thing", "things"),
    EveningJob.WARM: ("keep", "thing warm", "things warm"),
    EveningJob.COUNT: ("count in", "place", "places"),
    EveningJob.DATE: ("look at", "date", "dates"),
}
_BY_NAME = {EveningJob.ORDER, EveningJob.WASH}
_BY_PLACE = {EveningJob.COUNT}
