"""What is different for one farm, whether or not anything was put down."""

from farms.models import Farm
from invoicing.models import FarmTerms


def farm_terms(farm: Farm) -> FarmTerms:
    """The farm's row, or one not saved yet with what holds by itself."""
    row = FarmTerms.objects.within(farm.scope).filter(farm=farm).first()
    return row or FarmTerms(business_id=farm.business_id, farm=farm)
