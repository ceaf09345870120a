"""What a farm has to work with, as the domain asks for it."""

from farms.domain.handling import CrushPlace, PowerSupply
from farms.models import Farm
from visits.domain.visit_length import FarmSetup


def setup_of(farm: Farm) -> FarmSetup:
    """By the farm's page."""
    return FarmSetup(
        crush_on_site=farm.crush_place == CrushPlace.ON_SITE,
        has_hard_standing=farm.has_hard_standing,
        has_water=farm.has_water,
        has_power=farm.power != PowerSupply.NONE,
        has_light=farm.has_light,
        hygiene_level=farm.hygiene_level,
    )
