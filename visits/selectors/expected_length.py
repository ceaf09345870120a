"""How long a visit to a farm will take, by the business's own figures."""

from farms.domain.handling import CrushPlace, PowerSupply
from farms.models import Farm
from visits.domain.visit_length import ExpectedLength, FarmSetup, expected_length
from visits.selectors.business_figures import figures_of


def setup_of(farm: Farm) -> FarmSetup:
    """What the farm has to work with, as the domain asks for it."""
    return FarmSetup(
        crush_on_site=farm.crush_place == CrushPlace.ON_SITE,
        has_hard_standing=farm.has_hard_standing,
        has_water=farm.has_water,
        has_power=farm.power != PowerSupply.NONE,
        has_light=farm.has_light,
        hygiene_level=farm.hygiene_level,
    )


def expected_at(farm: Farm, *, head_count: int, corrective_count: int) -> ExpectedLength:
    """Minutes and their parts for so many cows at that farm."""
    return expected_length(
        figures_of(farm.scope).length,
        setup_of(farm),
        head_count=head_count,
        corrective_count=corrective_count,
    )
