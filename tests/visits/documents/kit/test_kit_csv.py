"""The kit as CSV: what is written can be read in again, and no spreadsheet runs a cell."""

import csv
import io
from datetime import UTC, date, datetime
from decimal import Decimal

from hypothesis import given, settings
from hypothesis import strategies as st

from farms.domain.herd_table import read_table
from visits.documents.csv_file import csv_file
from visits.documents.kit.kit_csv import (
    KitLine,
    LedgerLine,
    LotLine,
    consumables_table,
    filled_columns,
    ledger_table,
    lots_table,
    stock_table,
)
from visits.domain.kit.kit_sheet import OCCASIONS, KitSheet
from visits.domain.kit.plan_kit_list import plan_kit_list
from visits.domain.kit.read_kit_list import read_kit_list
from visits.domain.kit.starter_list import STARTER_LIST
from visits.domain.kit.stock_kinds import ConsumableKind, Unit

PLACES = ("Store", "Van 1")
GLUE = KitSheet("=Glue", ConsumableKind.GLUE, Unit.ML)

# Without a semicolon followed by an apostrophe, which cannot be told from one that was put there (see `csv_file`).
WORDS = (
    st.text(st.sampled_from("ab Z9äß€;,\"'=+-@%&<"), max_size=20)
    .map(lambda text: " ".join(text.replace(";'", "").split()))
    .filter(lambda text: ";'" not in text)
)
TENTHS = st.decimals(Decimal("0.1"), Decimal("99.9"), places=1)
SHEETS = st.builds(
    KitSheet,
    name=WORDS.filter(bool),
    kind=st.sampled_from(ConsumableKind),
    unit=st.sampled_from([Unit.ML, Unit.GRAM]),
    size=WORDS,
    supplier=WORDS,
    supplier_email=st.sampled_from(["", "shop@example.invalid"]),
    pack=st.decimals(Decimal("0.01"), Decimal(9999), places=2),
    price=st.none() | st.decimals(0, 9999, places=2),
    lead_days=st.integers(0, 365),
    service_percent=st.none() | st.decimals(50, Decimal("99.9"), places=1),
    shelf_days=st.none() | st.integers(0, 3000),
    lowest_celsius=st.none() | st.decimals(-40, 40, places=1),
    grams_per_ml=st.none() | st.decimals(Decimal("0.1"), 20, places=3),
    active_substance=WORDS,
    dilution=WORDS,
    contact_minutes=st.none() | TENTHS,
    note=WORDS,
    is_active=st.booleans(),
    recipe=st.dictionaries(st.sampled_from(list(OCCASIONS)), TENTHS, max_size=3),
)


def read_again(content):
    return plan_kit_list(read_kit_list(read_table(content), PLACES), [])


@settings(max_examples=60)
@given(SHEETS, st.dictionaries(st.sampled_from(PLACES), TENTHS))
def test_reading_what_we_wrote_gives_the_same(sheet, stock):
    plan = read_again(csv_file(consumables_table([KitLine(sheet, stock)], PLACES)))
    assert plan.refused == ()
    (item,) = plan.new
    assert (item.sheet, item.stock.by_place) == (sheet, stock)


def test_the_starter_list_is_such_a_list():
    content = csv_file(consumables_table([KitLine(sheet) for sheet in STARTER_LIST], ()))
    assert [item.sheet for item in read_again(content).new] == list(STARTER_LIST)


def test_columns_in_which_nothing_stands_are_left_out():
    table = filled_columns(consumables_table([KitLine(GLUE, {"Van 1": Decimal(3)})], PLACES))
    assert table.headings == ("name", "kind", "unit", "pack", "days to arrive", "in use", "stock in Van 1")
    assert table.rows == [("=Glue", "glue", "ml", Decimal(1), 5, "yes", Decimal(3))]


def test_a_spreadsheet_of_a_land_with_commas_is_read():
    rows = csv.reader(io.StringIO(csv_file(consumables_table([KitLine(GLUE)], ())).decode("utf-8-sig")))
    out = io.StringIO()
    csv.writer(out, delimiter=";").writerows([cell.replace(".", ",") for cell in row] for row in rows)
    (item,) = read_again(out.getvalue().encode("cp1252")).new
    assert item.sheet == GLUE


def cells_of(table):
    return list(csv.reader(io.StringIO(csv_file(table).decode("utf-8-sig"))))


def test_the_ledger_says_what_came_and_went():
    at = datetime(2026, 3, 3, 9, 5, tzinfo=UTC)
    line = LedgerLine(
        "=Glue", Unit.ML, at, "Van 1", "Used", Decimal("-40.00"), why="cow 101", who="@nobody", note="x"
    )
    head, row = cells_of(ledger_table([line]))
    found = dict(zip(head, row, strict=True))
    assert found["consumable"] == "'=Glue"
    assert (found["day"], found["time"], found["quantity"], found["who"]) == (
        "2026-03-03",
        "09:05",
        "-40",
        "'@nobody",
    )


def test_stock_is_summed_over_the_places():
    head, row = cells_of(
        stock_table([KitLine(GLUE, {"Store": Decimal(1500), "Van 1": Decimal("-3.50")})], PLACES)
    )
    assert head[3:] == ["in Store", "in Van 1", "in all"]
    assert row[3:] == ["1500", "-3.5", "1496.5"]


def test_lots_stand_with_their_dates():
    line = LotLine(
        "Glue", Unit.ML, "Store", "+L1", date(2027, 1, 2), date(2026, 1, 2), Decimal("12.00"), "Shop"
    )
    _, row = cells_of(lots_table([line]))
    assert row == ["Glue", "ml", "Store", "'+L1", "2027-01-02", "2026-01-02", "12", "Shop"]
