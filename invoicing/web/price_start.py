"""What the form of a price list begins with: the list it is made from."""

from datetime import date

from invoicing.domain.price_steps import PriceStep
from invoicing.domain.pricing import PriceItem
from invoicing.domain.read_price_lines import bands_text, steps_text
from invoicing.domain.travel_charge import Band
from invoicing.models import Price, PriceList, TravelBand
from invoicing.web.price_form import DISTANCE, LABELS
from trimops.kernel.scope import Scope

BY_DISTANCE = frozenset({PriceItem.KILOMETRE.value, PriceItem.MILE.value})


def start_from(scope: Scope, row: PriceList) -> dict[str, object]:
    """All of the list, as the fields of the form are called."""
    found: dict[str, object] = {
        "name": row.name,
        "valid_from": row.valid_from,
        "step_rule": row.step_rule,
        "travel_rule": row.travel_rule,
        "travel_unit": row.travel_unit,
        "bands": bands_text(
            [Band(b.up_to, b.price) for b in TravelBand.objects.within(scope).filter(price_list=row)]
        ),
        "minimum": row.minimum_charge or None,
        "guarantee_days": row.guarantee_days or None,
        "usual_from": row.usual_from,
        "usual_until": row.usual_until,
        "usual_weekdays": list(row.usual_weekdays),
    }
    return found | _prices(scope, row)


def start_anew(scope: Scope, newest: PriceList | None, day: date) -> dict[str, object]:
    """A copy of the newest list that begins on `day`; an empty one where there is none yet."""
    found: dict[str, object] = start_from(scope, newest) if newest else {"usual_weekdays": list("12345")}
    return found | {"name": f"Prices {day:%B %Y}", "valid_from": day}


def _prices(scope: Scope, row: PriceList) -> dict[str, object]:
    steps: dict[str, list[PriceStep]] = {}
    found: dict[str, object] = {}
    for price in Price.objects.within(scope).filter(price_list=row).order_by("from_quantity"):
        key = DISTANCE if price.item in BY_DISTANCE else price.item
        steps.setdefault(key, []).append(PriceStep(price.from_quantity, price.unit_price))
        found[f"{key}-tax"] = price.tax_code
    for key, (first, *more) in steps.items():
        found |= {f"{key}-price": first.unit_price, f"{key}-steps": steps_text(more)}
    return _usual_taxes(found) | found


def _usual_taxes(found: dict[str, object]) -> dict[str, object]:
    """What has no price yet is offered the tax that most of the list has."""
    codes = [code for name, code in found.items() if name.endswith("-tax")]
    usual = max(codes, key=codes.count, default=None)
    return {f"{key}-tax": usual for key in LABELS} if usual else {}
