"""Seller and buyer as an invoice keeps them."""

from farms.models import Farm
from trimops.accounts.models import Business


def seller_of(business: Business) -> dict[str, str]:
    """The business as its papers name it."""
    return {
        "name": business.name,
        "address": business.address,
        "vat_number": business.vat_number,
        "email": business.email,
        "phone": business.phone,
        "bank_details": business.bank_details,
    }


def buyer_of(farm: Farm) -> dict[str, str]:
    """Who pays for the farm: its payer, or the farm itself."""
    if farm.payer is not None:
        payer = farm.payer
        return {
            "name": payer.name,
            "address": payer.address,
            "vat_number": payer.vat_number,
            "email": payer.email,
        }
    return {"name": farm.name, "address": farm.address, "vat_number": farm.vat_number, "email": farm.email}
