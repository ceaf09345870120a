"""Store and vans at a glance: what lies where, how long it lasts, what is on its way, which date comes next."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from trimops.accounts.models import Business
from trimops.kernel.scope import Scope
from visits.domain.kit.kit_answer import kit_answer
from visits.selectors.kit.dated_lot import dated_lots
from visits.selectors.kit.glance_row import SHOWN_DAYS, GlanceRow
from visits.selectors.kit.kit_forecast import forecasts
from visits.selectors.kit.lots_left import all_lots_left
from visits.selectors.kit.open_supply import open_supply
from visits.selectors.kit.stock_ahead_of import stock_ahead_of
from visits.selectors.kit.stock_now import stock_now


@dataclass(frozen=True)
class KitGlance:
    """The rows, what is most pressing first; `answer` is the title of the page."""

    rows: Sequence[GlanceRow]
    answer: str

    @property
    def to_order(self) -> list[GlanceRow]:
        return [row for row in self.rows if row.order_now]

    @property
    def to_count(self) -> list[GlanceRow]:
        return [row for row in self.rows if row.below]

    @property
    def untold(self) -> list[GlanceRow]:
        """Never bought, moved or counted."""
        return [row for row in self.rows if not row.is_told and row.item.is_active]

    @property
    def is_untold(self) -> bool:
        """Whether nobody has said of anything what lies where."""
        return len(self.untold) == len(self.rows)

    @property
    def past_date(self) -> list[GlanceRow]:
        return [row for row in self.rows if row.next_lot and row.next_lot.is_past]


def kit_at_a_glance(business: Business, today: date) -> KitGlance:
    """Every consumable in use, and those out of use that are not used up. Some twenty queries, always as many."""
    scope = Scope(business.pk)
    stocks, supply, lots = stock_now(scope), open_supply(scope), all_lots_left(scope)
    ahead = {
        stock.consumable.pk: stock_ahead_of(
            stock, supply.get(stock.consumable.pk, ()), lots.get(stock.consumable.pk, ())
        )
        for stock in stocks
    }
    items = [stock.consumable for stock in stocks]
    told = forecasts(scope, items, ahead, today)
    rows = []
    for stock in stocks:
        key = stock.consumable.pk
        dated = [each for each in dated_lots(stock, lots.get(key, ()), today) if each.expires_on]
        next_lot = dated[0] if dated else None
        rows.append(GlanceRow(stock, told.get(key), supply.get(key, ()), next_lot, today))
    rows.sort(key=_pressing)
    last = today + timedelta(days=SHOWN_DAYS - 1)
    return KitGlance(rows, kit_answer([row.outlook for row in rows], today, last))


def _pressing(row: GlanceRow) -> tuple[bool, bool, date, str]:
    """Below nought, to be ordered, then by the day it runs out."""
    return not row.below, not row.order_now, row.outlook.runs_out or date.max, row.name
