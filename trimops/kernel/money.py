"""Money is Decimal and is rounded in one place."""

from decimal import ROUND_HALF_UP, Decimal


def round_money(amount: Decimal, digits: int = 2) -> Decimal:
    """Round half away from zero to `digits` decimals (the currency's minor unit, ISO 4217).

    EN 16931's VAT rules round the absolute value, so -13.775 becomes -13.78 (CEN test cii/BR-CO-17).
    """
    return amount.quantize(Decimal(1).scaleb(-digits), rounding=ROUND_HALF_UP)
