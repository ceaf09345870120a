"""A tub of disinfectant: what goes in, how far the van's stock goes. Arithmetic; the label and local rules decide."""

from dataclasses import dataclass
from decimal import ROUND_DOWN, Decimal

from visits.domain.kit.disinfectant_amount import disinfectant_amount, read_dilution
from visits.domain.kit.stock_kinds import Unit

LEAST_LITRES, MOST_LITRES = Decimal("0.1"), Decimal(2000)
WASH_CAUTIONS: tuple[str, ...] = (
    "Dirt off first: scrub and rinse. No disinfectant works through dung.",
    "The product's label and your local rules say which, how strong and how long. Never mix two products.",
    "Gloves on, eyes covered, fresh air; follow the maker's safety sheet. Water first, then the product.",
)
"""Clean first, mind dilution and contact time: Scottish government (trade-facts 5.1); the rest common practice."""

TRIED_ON_KNIVES = (
    "In a laboratory 20 seconds in iodophor 1:100, peroxygen 2 % w/v or sodium hypochlorite 2 % v/v left no live "
    "treponemes of digital dermatitis on clean knives; two other products did less (Gillespie, Carter, Blowey and "
    "Evans, Veterinary Record 2019/20; year and volume from memory). A laboratory is not a yard."
)


@dataclass(frozen=True)
class TubMix:
    """So much product in so many litres; `lasts_for` more litres from what the van holds, None where not known."""

    amount: Decimal
    unit: str
    litres: Decimal
    lasts_for: Decimal | None = None

    @property
    def words(self) -> str:
        return f"{_plain(self.amount)} {self.unit} in {_plain(self.litres)} litres"


def tub_mix(
    dilution: str, litres: Decimal, *, counted_in: Unit | None = None, in_van: Decimal | None = None
) -> TubMix | None:
    """None where the dilution cannot be read. `in_van` in the unit the product is counted in."""
    found = disinfectant_amount(dilution, litres, counted_in=counted_in)
    read = read_dilution(dilution)
    if found is None or read is None:
        return None
    amount, unit = found
    lasts = None
    if in_van is not None and counted_in is not None and counted_in.value == unit:
        per_litre = read.share * 1000
        exact = max(Decimal(0), in_van) * per_litre.denominator / per_litre.numerator
        lasts = exact.quantize(Decimal(1), ROUND_DOWN)
    return TubMix(amount, unit, litres, lasts)


def _plain(number: Decimal) -> str:
    return f"{number.normalize():f}"
