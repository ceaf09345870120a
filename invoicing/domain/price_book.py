"""All that held for one farm on the day of the work: prices with steps, tax, agreements, and the rules beside them."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal

from invoicing.domain.agreed_prices import Agreed, AgreementKind, agreed_for
from invoicing.domain.out_of_hours import UsualHours
from invoicing.domain.price_steps import PriceStep, StepRule
from invoicing.domain.pricing import NoPrice, PriceItem
from invoicing.domain.travel_charge import TravelTerms


@dataclass(frozen=True)
class Tax:
    """Category of UNCL 5305, percent, and where none is due the reason in words and of the VATEX list."""

    category: str
    percent: Decimal
    reason: str = ""
    reason_code: str = ""


@dataclass(frozen=True)
class PriceBook:
    """`prices` and `taxes` by item; a price of the list always has its tax. `digits`: of the currency."""

    prices: Mapping[PriceItem, tuple[PriceStep, ...]]
    taxes: Mapping[PriceItem, Tax]
    step_rule: StepRule = StepRule.WHOLE
    travel: TravelTerms = field(default_factory=TravelTerms)
    hours: UsualHours = field(default_factory=UsualHours)
    minimum: Decimal = Decimal(0)
    guarantee_days: int = 0
    agreed: tuple[Agreed, ...] = ()
    digits: int = 2

    def steps_of(self, item: PriceItem) -> tuple[PriceStep, ...]:
        """NoPrice names what has work but no price."""
        steps = self.prices.get(item, ())
        if not steps:
            raise NoPrice(f"The price list has no price for “{item.label}”: add one, then draft again.")
        return steps

    def tax_of(self, item: PriceItem) -> Tax:
        """The item's own tax; travel, supplements and the minimum without one take that of the call-out, else any."""
        found = self.taxes.get(item) or self.taxes.get(PriceItem.CALL_OUT)
        if found is None and self.taxes:
            found = next(iter(self.taxes.values()))
        if found is None:
            raise NoPrice("The price list is empty: add prices, then draft again.")
        return found

    def is_priced(self, item: PriceItem) -> bool:
        """Whether the list or an agreement has a price for it."""
        own = agreed_for(item, self.agreed)
        return bool(self.prices.get(item)) or (own is not None and own.kind is AgreementKind.PRICE)
