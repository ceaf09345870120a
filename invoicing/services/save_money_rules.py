"""How a business keeps its money is put down."""

import re

from django.db import transaction

from invoicing.documents.logo import LogoUnreadable, bare_logo
from invoicing.domain.bank_account import clean_bic, clean_iban
from invoicing.domain.reminder_steps import read_days
from invoicing.models import MoneyRules
from trimops.kernel.errors import FieldRefused

MOST_LOGO_BYTES = 500_000
DAYS_IN_YEAR = range(360, 367)
PREFIX = re.compile(r"[A-Z0-9](?:[A-Z0-9/-]{0,10}[A-Z0-9])?")


class RulesMakeNoSense(FieldRefused):
    """What was put down cannot be kept; `field` says where to mend it."""

    code = "rules_make_no_sense"


@transaction.atomic
def save_money_rules(*, rules: MoneyRules) -> MoneyRules:
    """Keep them, IBAN and BIC made clean. Papers issued keep what held when they were. RulesMakeNoSense."""
    _clean_bank(rules)
    for field in ("invoice_prefix", "credit_prefix"):
        if not PREFIX.fullmatch(getattr(rules, field)):
            raise RulesMakeNoSense(field, "Capital letters and digits, between them also - and /.")
    if bool(rules.cash_discount_percent) != bool(rules.cash_discount_days):
        raise RulesMakeNoSense(
            "cash_discount_days", "A cash discount has both a percent and days, or neither."
        )
    if rules.interest_days_in_year not in DAYS_IN_YEAR:
        raise RulesMakeNoSense("interest_days_in_year", "A year of interest has 360, 365 or 366 days.")
    if list(read_days(rules.reminder_days)) != rules.reminder_days:
        raise RulesMakeNoSense(
            "reminder_days", "Whole days after the due day, each more than the one before."
        )
    _check_logo(rules)
    rules.full_clean()
    rules.save()
    return rules


def _clean_bank(rules: MoneyRules) -> None:
    for field, clean in (("iban", clean_iban), ("bic", clean_bic)):
        told = getattr(rules, field)
        try:
            setattr(rules, field, clean(told) if told.strip() else "")
        except ValueError as fault:
            raise RulesMakeNoSense(field, str(fault)) from fault


def _check_logo(rules: MoneyRules) -> None:
    """A new one is drawn anew, so that nothing but its dots is kept."""
    if not rules.logo:
        return
    logo = bytes(rules.logo)
    known = MoneyRules.objects.within(rules.scope).filter(pk=rules.pk).values_list("logo", flat=True).first()
    if known is not None and bytes(known) == logo:
        return  # because: a JPEG drawn anew at each keeping would fade
    if len(logo) > MOST_LOGO_BYTES:
        raise RulesMakeNoSense("logo", "The logo is larger than 500 kB: choose a smaller picture.")
    try:
        rules.logo = bare_logo(logo)
    except LogoUnreadable as fault:
        raise RulesMakeNoSense("logo", fault.message) from fault
