"""Our invented statements, valid by the schemas of ISO 20022 (fixtures/bank/README.md says where these are from)."""

from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
from lxml import etree

from invoicing.domain.bank_file import MOST_BOOKINGS, UnreadableBankFile
from invoicing.domain.camt053 import MOST_TAGS, looks_like_xml, read_camt053

BANK = Path(__file__).parents[3] / "fixtures" / "bank"
OLD, NEW = (BANK / "camt053_v02.xml").read_bytes(), (BANK / "camt053_v08_overlap.xml").read_bytes()


@pytest.mark.parametrize(("version", "content"), [("02", OLD), ("08", NEW)])
def test_our_files_are_valid_by_the_schema(version, content):
    schema = etree.XMLSchema(etree.parse(BANK / f"camt.053.001.{version}.xsd"))
    schema.assertValid(etree.fromstring(content))


def test_two_statements_of_version_02():
    monday, tuesday = read_camt053(OLD)
    assert (monday.account, monday.currency) == ("DE91100000000123456789", "EUR")
    assert (monday.opening, monday.closing, tuesday.opening) == (1000, 1558, 1558)
    assert [line.amount for line in monday.lines] == [
        Decimal(amount) for amount in ("250.40", "180.00", "120.00", "-89.90", "97.50")
    ]
    assert monday.warnings == ("Not booked yet, so left out: 1.",)
    assert tuesday.warnings == ()
    assert tuesday.lines[-1].is_reversal
    assert tuesday.lines[-1].amount == -75


def test_version_08_has_its_names_elsewhere():
    (week,) = read_camt053(NEW)
    named = week.lines[4]
    assert (named.party_name, named.party_account) == ("Ærøgården", "NL08TEST0300065264")
    assert (named.reference, named.charges) == ("RF73INV20260042", Decimal("0.90"))
    assert named.booked_on == date(2026, 3, 4)


def test_a_balance_that_does_not_follow_is_told():
    (week,) = read_camt053(NEW.replace(b">1877.10<", b">1900.00<"))
    assert any("1877.10" in words and "1900.00" in words for words in week.warnings)


def test_the_closing_balance_before_opens_the_next():
    (week,) = read_camt053(NEW.replace(b"OPBD", b"PRCD"))
    assert week.opening == 1558


def test_a_statement_that_stands_twice_counts_once():
    body = NEW[NEW.index(b"    <Stmt>") : NEW.index(b"  </BkToCstmrStmt>")]
    assert len(read_camt053(NEW.replace(body, body + body))) == 1


BOMB = b'<!DOCTYPE d [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;">]>'
HEAD = b"<Document "


@pytest.mark.parametrize(
    ("content", "why"),
    [
        (OLD.replace(HEAD, BOMB + HEAD), "DOCTYPE"),
        (
            NEW.decode()
            .replace("UTF-8", "UTF-16")
            .replace("<Document ", BOMB.decode() + "<Document ")
            .encode("utf-16"),
            "DOCTYPE",
        ),
        (OLD[:900], "broken"),
        (b"not xml at all", "broken"),
        (b"", "empty"),
        (b" " * 6_000_000 + b"<", "5 MB"),
        (OLD.replace(b"camt.053.001.02", b"camt.054.001.02"), "no CAMT.053"),
        (b"<Document/>", "no CAMT.053"),
        (OLD.replace(b"Stmt>", b"Other>"), "no statement"),
        (OLD.replace(b"BookgDt>", b"Bd>").replace(b"ValDt>", b"Vd>"), "no day"),
        (OLD.replace(b">250.40<", b">NaN<"), "no amount"),
        (OLD.replace(b">250.40<", b">-250.40<"), "no amount"),
        (OLD.replace(b">CRDT<", b">???<"), "no amount"),
        (b"<a>" * 400, "broken"),
    ],
)
def test_what_cannot_be_read_says_why(content, why):
    with pytest.raises(UnreadableBankFile, match=why):
        read_camt053(content)


def test_an_entity_of_the_file_system_is_not_followed(tmp_path):
    (tmp_path / "secret").write_text("secret words")
    doctype = f'<!DOCTYPE d [<!ENTITY x SYSTEM "{tmp_path}/secret">]>'.encode()
    with pytest.raises(UnreadableBankFile):
        read_camt053(OLD.replace(HEAD, b" " * 10_000 + doctype + HEAD).replace(b"Spende", b"&x;"))


def test_xml_is_told_from_csv():
    assert looks_like_xml(OLD)
    assert looks_like_xml(b"\xef\xbb\xbf <a/>")
    assert looks_like_xml("<a/>".encode("utf-16"))
    assert not looks_like_xml(b"Date;Amount")


def entries(*told):
    body = "".join(
        f'<Ntry><Amt Ccy="EUR">{amount}</Amt><CdtDbtInd>CRDT</CdtDbtInd><Sts>BOOK</Sts>'
        f"<BookgDt><Dt>{day}</Dt></BookgDt></Ntry>"
        for amount, day in told
    )
    space = "urn:iso:std:iso:20022:tech:xsd:camt.053.001.08"
    return f'<Document xmlns="{space}"><BkToCstmrStmt><Stmt>{body}</Stmt></BkToCstmrStmt></Document>'.encode()


@pytest.mark.parametrize(
    "amount", ["1e99", "1e99999999", "12345678901234567890", "1.123456", "NaN", "sNaN", "-1"]
)
def test_an_amount_that_no_column_holds_is_told(amount):
    with pytest.raises(UnreadableBankFile, match="Entry 2 has no amount"):
        read_camt053(entries(("5.00", "2026-03-02"), (amount, "2026-03-02")))


@pytest.mark.parametrize("day", ["0001-01-01", "9999-12-31", "", "2026"])
def test_a_day_far_from_our_time_is_told(day):
    with pytest.raises(UnreadableBankFile, match="Entry 1 has no day"):
        read_camt053(entries(("5.00", day)))


@pytest.mark.parametrize("many", [b"<Ntry/>", b"<Ntry><NtryDtls><TxDtls/></NtryDtls></Ntry>"])
def test_too_many_bookings_are_not_even_begun(many):
    content = entries().replace(b"<Stmt>", b"<Stmt>" + many * (MOST_BOOKINGS + 1))
    with pytest.raises(UnreadableBankFile, match="shorter periods"):
        read_camt053(content)


def test_a_file_of_nothing_but_tags_is_refused_before_it_is_read():
    with pytest.raises(UnreadableBankFile, match=f"more than {MOST_BOOKINGS}"):
        read_camt053(b"<Document>" + b"<a/>" * (MOST_TAGS + 1) + b"</Document>")
