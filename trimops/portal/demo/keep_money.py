"""How the demo's business keeps its money: account, terms, agreements, rates; invented but for the law's figures."""

import json
from datetime import date, datetime
from decimal import Decimal
from functools import cache
from typing import TypedDict

from farms.models import Farm
from invoicing.domain.agreed_prices import AgreementKind
from invoicing.domain.billing_rhythm import BillingRhythm
from invoicing.domain.mileage_allowance import AllowanceRate
from invoicing.domain.pricing import PriceItem
from invoicing.domain.travel_charge import DistanceUnit
from invoicing.models import FarmTerms, MoneyRules
from invoicing.services.save_agreement import AgreementWord, save_agreement
from invoicing.services.save_farm_terms import save_farm_terms
from invoicing.services.save_money_rules import save_money_rules
from invoicing.services.set_mileage_rate import set_mileage_rate
from invoicing.services.set_reference_rate import set_reference_rate
from trimops.kernel.scope import Scope
from trimops.portal.demo.build_people import Crew
from trimops.portal.demo.demo_files import FOLDER


class Agreed(TypedDict, total=False):
    farm: str
    item: str
    price: str
    percent: str
    why: str


class Mileage(TypedDict):
    first: str
    up_to: int
    then: str
    month: int
    day: int
    source: str


class MoneySketch(TypedDict):
    """What `fixtures/demo/money.json` holds."""

    account: dict[str, str]
    credit_terms: str
    reminder_days: list[int]
    interest_margin: str
    fixed_sums: list[list[str]]
    reference_rates: list[tuple[str, str]]
    mileage: Mileage
    guarantee_days: int
    monthly: list[str]
    orders: dict[str, str]
    agreements: list[Agreed]


@cache
def money_sketch() -> MoneySketch:
    found: MoneySketch = json.loads((FOLDER / "money.json").read_text())
    return found


def keep_money(crew: Crew, since: date, at: datetime) -> None:
    """Before anything is billed."""
    sketch = money_sketch()
    _rules(crew, sketch)
    _rates(crew, sketch, since)
    farms = {farm.name: farm for farm in Farm.objects.within(Scope(crew.business.pk))}
    _terms(crew, sketch, farms, at)
    _agreements(sketch, farms, since)


def _rules(crew: Crew, sketch: MoneySketch) -> None:
    rules = MoneyRules(business=crew.business, **sketch["account"])
    rules.credit_terms, rules.reminder_days = sketch["credit_terms"], sketch["reminder_days"]
    rules.charges_interest, rules.interest_margin = True, Decimal(sketch["interest_margin"])
    rules.fixed_sums, rules.distance_unit = sketch["fixed_sums"], DistanceUnit.MILE
    save_money_rules(rules=rules)


def _rates(crew: Crew, sketch: MoneySketch, since: date) -> None:
    for day, percent in sketch["reference_rates"]:
        set_reference_rate(
            business=crew.business,
            valid_from=date.fromisoformat(day),
            percent=Decimal(percent),
            source="invented for the demo",
        )
    mileage = sketch["mileage"]
    rate = AllowanceRate(
        since,
        DistanceUnit.MILE,
        Decimal(mileage["first"]),
        Decimal(mileage["up_to"]),
        Decimal(mileage["then"]),
        (mileage["month"], mileage["day"]),
    )
    set_mileage_rate(business=crew.business, rate=rate, source=mileage["source"])


def _terms(crew: Crew, sketch: MoneySketch, farms: dict[str, Farm], at: datetime) -> None:
    for name in {*sketch["monthly"], *sketch["orders"]} & farms.keys():
        terms = FarmTerms(business=crew.business, farm=farms[name])
        if name in sketch["monthly"]:
            terms.rhythm = BillingRhythm.MONTH
        terms.order_number = sketch["orders"].get(name, "")
        save_farm_terms(terms=terms, country="", at=at, by=crew.people["office"])


def _agreements(sketch: MoneySketch, farms: dict[str, Farm], since: date) -> None:
    for agreed in sketch["agreements"]:
        if agreed["farm"] in farms:
            kind = AgreementKind.PRICE if "price" in agreed else AgreementKind.PERCENT
            amount = Decimal(agreed.get("price") or agreed["percent"])
            item = PriceItem(agreed["item"]) if "item" in agreed else None
            word = AgreementWord(kind, amount, item, agreed["why"], since)
            save_agreement(farm=farms[agreed["farm"]], word=word)
