from decimal import Decimal as D
from pathlib import Path

import pytest

import invoicing
from invoicing.domain.code_lists import COUNTRIES
from invoicing.domain.tax_scheme import rate_fault, read_schemes

SCHEMES = read_schemes((Path(invoicing.__file__).parent / "data" / "tax_schemes.json").read_text("utf-8"))


def test_every_country_has_what_the_page_shows_and_says_where_it_is_from():
    assert {"GB", "IE", "DE", "NL", "FR", "DK", "AT", "BE"} <= set(SCHEMES) <= COUNTRIES
    for scheme in SCHEMES.values():
        assert scheme.name
        assert scheme.tax_name
        assert scheme.number_label
        assert all(rate.source for rate in scheme.rates)
        assert scheme.rates[0].code == "standard"


def test_every_suggestion_can_stand_on_an_invoice_and_fits_its_columns():
    for scheme in SCHEMES.values():
        codes = [rate.code for rate in scheme.rates]
        assert len(set(codes)) == len(codes)
        assert {"reverse", "none"} <= set(codes)
        for rate in scheme.rates:
            assert rate_fault(rate.category, rate.percent, rate.reason, rate.reason_code) is None
            assert len(rate.code) <= 20
            assert len(rate.name) <= 60


def test_figures_read():
    kingdom = SCHEMES["GB"]
    assert (kingdom.tax_name, kingdom.rates[0].percent) == ("VAT", D(20))
    assert SCHEMES["FR"].rates[3].reason_code == "VATEX-FR-FRANCHISE"


@pytest.mark.parametrize(
    ("rate", "field"),
    [
        (("S", "20"), None),
        (("S", "0"), "percent"),
        (("Z", "0"), None),
        (("Z", "5"), "percent"),
        (("E", "0", "Small business"), None),
        (("E", "0"), "reason"),
        (("E", "0", "  "), "reason"),
        (("AE", "0", "", "VATEX-EU-AE"), None),
        (("O", "7", "Not registered"), "percent"),
        (("S", "20", "Why not"), "reason"),
        (("E", "0", "", "VATEX-GB-NONE"), "reason_code"),
    ],
)
def test_what_cannot_stand_on_an_invoice(rate, field):
    category, percent, *why = rate
    fault = rate_fault(category, D(percent), *why)
    assert (fault.field if fault else None) == field
