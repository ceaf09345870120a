from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest

from invoicing.domain.bank_csv import (
    MOST_COLUMNS,
    CsvMapping,
    csv_rows,
    guess_mapping,
    read_amount,
    read_bank_csv,
)
from invoicing.domain.bank_file import MOST_BOOKINGS, UnreadableBankFile

BANK = Path(__file__).parents[3] / "fixtures" / "bank"
COMMA = (BANK / "semicolon_comma.csv").read_bytes()
POINT = (BANK / "comma_point.csv").read_bytes()
FOR_COMMA = CsvMapping(
    encoding="cp1252", header_rows=2, footer_rows=1, amount=1, party=2, account=3, text=(4,), reference=5
)
FOR_POINT = CsvMapping(
    delimiter=",", decimal=".", day_format="%d/%m/%Y", credit=1, debit=2, party=3, text=(4,)
)


def test_one_amount_column_with_comma():
    lines = read_bank_csv(COMMA, FOR_COMMA, "EUR").lines
    assert [line.amount for line in lines] == [Decimal("250.40"), Decimal("-1089.90"), Decimal(12)]
    assert lines[0].text == "Klauenpflege; Rechnung INV-2026-0042"
    assert (lines[1].party_name, lines[2].party_name) == ("Blockbedarf Süd", "Müller-Brändli")
    assert (lines[2].reference, lines[0].party_account) == ("RF73INV20260042", "DE79100000000555000111")


def test_two_amount_columns_with_point():
    lines = read_bank_csv(POINT, FOR_POINT, "GBP").lines
    assert [(line.booked_on, line.amount) for line in lines] == [
        (date(2026, 3, 4), 1250),
        (date(2026, 3, 5), -80),
    ]
    assert lines[1].party_name == "Blocks, Glue & Co"


def test_a_column_that_says_which_way():
    content = b"2026-03-04;10,00;C;x\n2026-03-04;10,00;D;x\n2026-03-05;1,00;?;x"
    mapping = CsvMapping(
        header_rows=0, day_format="%Y-%m-%d", amount=1, mark=2, credit_word="C", debit_word="D"
    )
    with pytest.raises(UnreadableBankFile, match=r"^Line 3: “\?” says neither"):
        read_bank_csv(content, mapping, "EUR")
    lines = read_bank_csv(content.replace(b"?", b"C"), mapping, "EUR").lines
    assert [line.amount for line in lines] == [10, -10, 1]


def test_every_line_that_cannot_be_read_is_named_and_none_is_read():
    content = POINT + b"nonsense,1.00,,x,y\n06/03/2026,1.00,2.00,x,y\n07/03/2026,,,x,y\n"
    with pytest.raises(UnreadableBankFile) as told:
        read_bank_csv(content, FOR_POINT, "GBP")
    assert "Line 4: “nonsense” is no day like 04/03/2026." in str(told.value)
    assert "Line 5: one of the two" in str(told.value)
    assert "Line 6: one of the two" in str(told.value)


def test_many_faults_are_told_shortly():
    with pytest.raises(UnreadableBankFile, match="And 12 more"):
        read_bank_csv(b"h\n" + b"x,y\n" * 20, FOR_POINT, "GBP")


def test_wrong_encodings_and_empty_files():
    with pytest.raises(UnreadableBankFile, match="utf-8"):
        csv_rows(COMMA, "utf-8-sig", ";")
    with pytest.raises(UnreadableBankFile, match="No line is left"):
        read_bank_csv(b"Day;Amount\n", CsvMapping(), "EUR")
    with pytest.raises(UnreadableBankFile, match="told apart"):
        csv_rows(b'a;"b', "utf-8-sig", ";")


def test_the_number_of_a_line_is_that_of_the_file():
    rows = csv_rows(b'a;b\n\n"two\nlines";c\n', "utf-8-sig", ";")
    assert [number for number, _ in rows] == [1, 4]


@pytest.mark.parametrize(
    ("content", "guess"),
    [
        (COMMA, ("cp1252", ";", ",")),
        (POINT, ("utf-8-sig", ",", ".")),
        ("a\tb\tc\n1.50\t2.50\t3\n".encode("utf-16"), ("utf-16", "\t", ".")),
    ],
)
def test_a_first_guess(content, guess):
    found = guess_mapping(content)
    assert (found.encoding, found.delimiter, found.decimal) == guess


def test_the_day_is_guessed_where_most_rows_have_one():
    assert (guess_mapping(COMMA).day, guess_mapping(COMMA).day_format) == (0, "%d.%m.%Y")
    assert guess_mapping(POINT).day_format == "%d/%m/%Y"
    other = guess_mapping(b"x,2026-03-04,1\ny,2026-03-05,1\n")
    assert (other.day, other.day_format) == (1, "%Y-%m-%d")
    assert guess_mapping(b"nothing").day == 0


@pytest.mark.parametrize(
    ("text", "decimal", "amount"),
    [
        ("1.234,56", ",", "1234.56"),
        ("1,234.56", ".", "1234.56"),
        ("1 234,56", ",", "1234.56"),
        ("1'234'567.5", ".", "1234567.5"),
        ("-12,50", ",", "-12.50"),
        ("12,50-", ",", "-12.50"),
        ("(12.50)", ".", "-12.50"),
        ("\N{MINUS SIGN}12.50", ".", "-12.50"),
        ("+12.50", ".", "12.50"),
        ("EUR 12,50", ",", "12.50"),
        ("£12", ".", "12"),
        ("1.234", ",", "1234"),
    ],
)
def test_amounts_as_banks_write_them(text, decimal, amount):
    assert read_amount(text, decimal, 2) == Decimal(amount)


@pytest.mark.parametrize(
    ("text", "decimal"),
    [
        ("", "."),
        ("x", "."),
        ("1.2.3", "."),
        ("12,34,56", "."),
        ("1,23", "."),
        ("1.234", "."),
        ("1.23,4", "."),
        ("1.5.0", ","),
        ("١٢", "."),
        ("NaN", "."),
        ("1e3", "."),
        ("--5", "."),
    ],
)
def test_what_is_no_amount(text, decimal):
    with pytest.raises(ValueError, match=r"no amount|more decimals"):
        read_amount(text, decimal, 2)


@pytest.mark.parametrize(
    "row", ["2026-03-04;" + "9" * 60, "2026-03-04;99999999999", "0001-01-01;5", "9999-12-31;5"]
)
def test_a_sum_or_a_day_that_cannot_be_is_told_with_its_line(row):
    mapping = CsvMapping(day_format="%Y-%m-%d", amount=1, header_rows=0)
    with pytest.raises(UnreadableBankFile, match=r"^Line 1: .* (is no amount|is no day)"):
        read_bank_csv(row.encode(), mapping, "EUR")


@pytest.mark.parametrize(
    ("content", "encoding"),
    [
        (b"a;b\0", "utf-8-sig"),
        ("a;b".encode("utf-16"), "cp1252"),
        (b"a;b", "punycode"),
        (b"a;b", "idna"),
        (b"a;b", "a\0"),
        (b"a;b", ""),
    ],
)
def test_other_letters_than_ours_are_not_tried(content, encoding):
    with pytest.raises(UnreadableBankFile, match="is not written in"):
        csv_rows(content, encoding, ";")


def test_a_sign_that_parts_no_columns():
    with pytest.raises(UnreadableBankFile, match="cannot be told apart"):
        csv_rows(b"a;b", "utf-8-sig", "ab")


def test_a_file_of_a_million_columns_or_lines_is_refused_before_it_is_looked_through():
    wide = b"1;" * 1_000_000
    assert guess_mapping(wide).delimiter == ";"
    with pytest.raises(UnreadableBankFile, match=f"{MOST_COLUMNS} columns"):
        csv_rows(wide, "utf-8-sig", ";")
    with pytest.raises(UnreadableBankFile, match="shorter periods"):
        csv_rows(b"a;b\n" * (MOST_BOOKINGS + 101), "utf-8-sig", ";")
