"""Price lists, by the day from which they hold."""

from invoicing.api.price_sheet import PriceListShown, PriceListWord, said_by, sheet_of
from invoicing.models import PriceList
from invoicing.models.prices import PriceListQuerySet
from invoicing.selectors.price_sheets import whole_lists
from invoicing.services.drop_prices import drop_prices
from invoicing.services.set_prices import set_prices
from trimops.accounts.actions import Action
from trimops.api.fields import Day
from trimops.api.kinds import RowApi, RowsApi
from trimops.api.op import Filter, Op, Said


class PriceListsApi(RowsApi[PriceList]):
    """Price lists, the newest first.

    Refused: `list_begins_then`, `tax_rate_unknown`, `travel_price_missing`, `period_locked`.
    """

    model = PriceList
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_price_lists",
            "The price lists",
            shows=PriceListShown,
            lists=True,
            filters={"held_on": Filter(Day(help_text="Lists that begin by that day."), "valid_from__lte")},
            orders={"newest": ("-valid_from", "-id"), "id": ("id",)},
        ),
        "post": Op(
            Action.KEEP_PRICES,
            "set_prices",
            "Prices from a day on",
            takes=PriceListWord,
            shows=PriceListShown,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> PriceListQuerySet:
        return whole_lists(self.scope)

    def make(self, content: Said) -> PriceList:
        made = set_prices(business=self.seat.business, sheet=sheet_of(content))
        return whole_lists(self.scope).get(pk=made.pk)


class PriceListApi(RowApi[PriceList]):
    """A price list. One at which work was billed stays as it is (`prices_billed_on`); others are mended or dropped.

    Of what is said, each part takes the place of the whole part before: `prices` are all prices.
    """

    model = PriceList
    ops = {
        "get": Op(Action.SEE_MONEY, "read_price_list", "One price list", shows=PriceListShown),
        "patch": Op(
            Action.KEEP_PRICES,
            "change_price_list",
            "Mend a price list",
            takes=PriceListWord,
            shows=PriceListShown,
            changes=True,
        ),
        "delete": Op(Action.KEEP_PRICES, "drop_price_list", "Drop a price list", status=204, changes=True),
    }

    def row(self, *, is_locked: bool = False) -> PriceList:
        found = super().row(is_locked=is_locked)
        return whole_lists(self.scope).get(pk=found.pk)

    def change(self, row: PriceList, content: Said) -> PriceList:
        sheet = sheet_of(said_by(row) | content)
        set_prices(business=self.seat.business, sheet=sheet, instead_of=row)
        return self.row()

    def remove(self, row: PriceList) -> None:
        drop_prices(price_list=row)
