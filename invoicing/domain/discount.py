"""A discount as somebody says it: in percent, or as an amount."""

from dataclasses import dataclass
from decimal import Decimal

from trimops.kernel.money import round_money

HUNDRED = Decimal(100)


@dataclass(frozen=True)
class Discount:
    """Either percent or amount; neither: nothing is taken off."""

    percent: Decimal | None = None
    amount: Decimal | None = None


def amount_off(discount: Discount, of: Decimal, digits: int = 2) -> Decimal:
    """What the discount comes to of that much. ValueError when it is negative, both, or more than there is."""
    if discount.percent is not None and discount.amount is not None:
        raise ValueError("Give the discount in percent or as an amount, not both.")
    if discount.percent is not None:
        if not 0 <= discount.percent <= HUNDRED:
            raise ValueError("A discount is from 0 to 100 percent.")
        return round_money(of * discount.percent / HUNDRED, digits)
    amount = discount.amount or Decimal(0)
    if not 0 <= amount <= of:
        raise ValueError(f"A discount is from 0 to {of}.")
    if amount != round_money(amount, digits):
        raise ValueError("The discount has more decimals than the currency.")
    return round_money(amount, digits)


def discount_words(discount: Discount) -> str:
    """ "5 % off", "12.50 off" or "no discount"."""
    if discount.percent:
        return f"{discount.percent.normalize():f} % off"
    return f"{discount.amount} off" if discount.amount else "no discount"
