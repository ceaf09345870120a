"""Where the money papers of a farm go."""

from farms.models import Farm
from invoicing.selectors.farm_terms import farm_terms


def money_addresses(farm: Farm) -> list[str]:
    """The farm's own list, else the address of its payer, else of the farm; none where nothing is put down.

    People who get reports of visits are not among them: what a cow has is theirs to know, what is owed is not.
    """
    own = [address for address in farm_terms(farm).send_to if address]
    if own:
        return list(dict.fromkeys(own))
    fallback = (farm.payer.email if farm.payer else "") or farm.email
    return [fallback] if fallback else []


def wants_xml(farm: Farm) -> bool:
    """Whether the e-invoice goes with the mail as a file of its own."""
    return farm_terms(farm).sends_xml
