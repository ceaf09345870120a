"""The base of every page of a farm client."""

from typing import ClassVar

from farms.models import Farm
from trimops.accounts.actions import Action, Does
from trimops.kernel.errors import NotFound
from trimops.portal.web.farm_seat import refuse_form_of_other_farm
from trimops.web.scoped_page import ScopedPage


class ClientPage(ScopedPage):
    """Open to farm clients alone, each at the farm they sit at."""

    does: ClassVar[Does] = Action.SEE_OWN_FARM

    def farm(self) -> Farm:
        """The farm of the seat, with its business. SatElsewhere for a form that was shown for another."""
        if self.scope.farm_id is None:
            raise NotFound("There is nothing at this address.")
        farm = self.fetch(Farm, self.scope.farm_id, "business")
        refuse_form_of_other_farm(self.request, farm)
        return farm
