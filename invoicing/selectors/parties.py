"""Seller, buyer and the way to pay: as an invoice keeps them, and as its paper names them."""

from farms.models import Farm, Payer
from invoicing.documents.invoice_content import Party, Payment
from invoicing.models import MoneyRules
from trimops.accounts.models import Business


def seller_of(business: Business, rules: MoneyRules) -> dict[str, str]:
    """The business as its papers name it."""
    return {
        "name": business.name,
        "address": business.address,
        "country": business.country,
        "vat_number": business.vat_number,
        "registration_name": rules.registration_name,
        "registration_number": rules.registration_number,
        "email": business.email,
        "phone": business.phone,
    }


def buyer_of(farm: Farm, payer: Payer | None = None) -> dict[str, str]:
    """Who pays for the farm: the payer handed in, else its own payer, or the farm itself."""
    party = payer or farm.payer or farm
    return {
        "name": party.name,
        "address": party.address,
        "country": party.country or farm.business.country,
        "vat_number": party.vat_number,
        "email": party.email,
    }


def payment_of(business: Business, rules: MoneyRules) -> dict[str, str]:
    """How to pay the business, as it is printed on an invoice."""
    return {
        "details": business.bank_details,
        "iban": rules.iban,
        "bic": rules.bic,
        "account_name": rules.account_name or business.name,
        "credit_terms": rules.credit_terms,
        **_cash_discount(rules),
    }


def party_on_paper(kept: dict[str, str]) -> Party:
    """A seller or a buyer as kept."""
    return Party(
        kept["name"],
        tuple(line for line in kept.get("address", "").splitlines() if line.strip()),
        kept.get("vat_number", ""),
        kept.get("phone", ""),
        kept.get("email", ""),
        country=kept.get("country", ""),
        registration=kept.get("registration_number", ""),
        registration_name=kept.get("registration_name", ""),
    )


def payment_on_paper(
    kept: dict[str, str], reference: str, terms: str = "", creditor_reference: str = ""
) -> Payment:
    """The way to pay as kept, with what the payer is to quote."""
    lines = [line.partition(":") for line in kept.get("details", "").splitlines() if line.strip()]
    return Payment(
        tuple((what.strip(), value.strip()) for what, _, value in lines),
        reference,
        terms,
        kept.get("iban", ""),
        kept.get("bic", ""),
        kept.get("account_name", ""),
        creditor_reference,
        kept.get("credit_terms", ""),
    )


def _cash_discount(rules: MoneyRules) -> dict[str, str]:
    if not rules.cash_discount_percent:
        return {}
    percent = f"{rules.cash_discount_percent.normalize():f}"
    return {"cash_discount_percent": percent, "cash_discount_days": str(rules.cash_discount_days)}
