"""Many rows named by their ids in one body, read in one query."""

from collections.abc import Iterable
from typing import TypeVar

from rest_framework import serializers

from trimops.api.op import Said, Shape
from trimops.api.refusals import CannotBeMeant
from trimops.api.rows import MOST_ID
from trimops.kernel.scope import Scope
from trimops.tenancy.models import TenantModel

M = TypeVar("M", bound=TenantModel)


class KeyField(serializers.IntegerField):
    """The id of a row that is looked for together with its like (`picked`)."""

    def __init__(self, **options: Shape) -> None:
        super().__init__(**{"min_value": 1, "max_value": MOST_ID, **options})


def picked(model: type[M], scope: Scope, said: Iterable[tuple[str, int]]) -> dict[int, M]:
    """By id, each of the rows that `said` names as (path, id); CannotBeMeant for each that is not there."""
    wanted = list(said)
    rows: Shape = model._default_manager.all()
    found: dict[int, M] = rows.within(scope).select_related("business").in_bulk({key for _, key in wanted})
    what = model._meta.verbose_name
    faults = [(path, f"There is no such {what} here.") for path, key in wanted if key not in found]
    if faults:
        raise CannotBeMeant(faults=faults)
    return found


def paths(list_name: str, name: str, lines: list[Said]) -> list[tuple[str, int]]:
    """(`items[2].consumable`, id) of each line that names one."""
    return [(f"{list_name}[{n}].{name}", line[name]) for n, line in enumerate(lines) if line.get(name)]
