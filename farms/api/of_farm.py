"""What hangs on the farm that an address names."""

from functools import cached_property
from typing import TypeVar

from rest_framework.response import Response

from farms.models import Farm
from trimops.api.kinds import RowsApi
from trimops.api.op import Shape
from trimops.tenancy.models import TenantModel

M = TypeVar("M", bound=TenantModel)


class FarmRowsApi(RowsApi[M]):
    """Rows of one farm: `farms/<pk>/…`; what is said to be of it is of it."""

    # Under which address each of the rows is read.
    read_at = ""

    @cached_property
    def farm(self) -> Farm:
        """The farm of the address within the scope, else NotFound."""
        return self.fetch(Farm, self.kwargs["pk"], "business")

    def rows(self) -> Shape:
        return super().rows().filter(farm=self.farm)

    def address_of(self, row: M) -> str:
        return f"/api/v1/{self.read_at}/{row.pk}/"

    def _add(self) -> Response:
        # because: of a farm that is not there nobody hears what else is wrong with the call
        _ = self.farm
        return super()._add()
