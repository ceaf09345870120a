from decimal import Decimal
from io import BytesIO

import pytest
from PIL import Image

from invoicing.models import MoneyRules
from invoicing.selectors.money_rules import money_rules
from invoicing.services.save_money_rules import RulesMakeNoSense, save_money_rules


def picture(kind="PNG", size=(60, 30)):
    out = BytesIO()
    Image.new("RGB", size, "navy").save(out, kind)
    return out.getvalue()


def save(house, **changes):
    rules = money_rules(house.scope)
    for name, value in changes.items():
        setattr(rules, name, value)
    return save_money_rules(rules=rules)


def test_rules_are_kept_once_and_the_bank_is_made_clean(house):
    """The IBAN and the BIC are the example of the ISO 13616 registry for the United Kingdom."""
    save(house, iban="gb29 nwbk 6016 1331 9268 19", bic="nwbkgb2l", logo=picture())
    save(house, reminder_days=[7, 21], cash_discount_percent=Decimal(2), cash_discount_days=10)
    row = MoneyRules.objects.within(house.scope).get()
    assert (row.iban, row.bic) == ("GB29NWBK60161331926819", "NWBKGB2L")
    assert (row.reminder_days, bytes(row.logo)) == ([7, 21], picture())


@pytest.mark.parametrize(
    ("changes", "field"),
    [
        ({"iban": "GB29NWBK60161331926818"}, "iban"),
        ({"bic": "NWBK"}, "bic"),
        ({"invoice_prefix": "inv"}, "invoice_prefix"),
        ({"credit_prefix": "-"}, "credit_prefix"),
        ({"cash_discount_percent": Decimal(2)}, "cash_discount_days"),
        ({"reminder_days": [21, 7]}, "reminder_days"),
        ({"reminder_days": [7, "later"]}, "reminder_days"),
        ({"logo": b"GIF89a not a picture we print"}, "logo"),
        ({"logo": b"\x89PNG" + bytes(500_000)}, "logo"),
    ],
)
def test_what_cannot_be_kept_is_refused_at_its_field(house, changes, field):
    with pytest.raises(RulesMakeNoSense) as refused:
        save(house, **changes)
    assert refused.value.field == field


def test_a_jpeg_is_a_logo_too(house):
    assert save(house, logo=picture("JPEG")).logo
