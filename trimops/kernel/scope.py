"""Whose rows a caller may see."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Scope:
    """One business, or one farm of it.

    Staff carry only `business_id`. A farm client also carries `farm_id` and sees that farm's rows alone.
    """

    business_id: int
    farm_id: int | None = None

    @property
    def is_farm_client(self) -> bool:
        return self.farm_id is not None
