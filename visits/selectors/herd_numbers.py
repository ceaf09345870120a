"""What the cows of a farm are called."""

from collections import defaultdict

from farms.models import Cow, CowIdentity, Farm
from visits.domain.score_lines import HerdNumbers


def herd_numbers(farm: Farm) -> HerdNumbers:
    """Of the cows that are on the farm. Two queries."""
    numbers: dict[str, list[int]] = defaultdict(list)
    others: dict[str, list[int]] = defaultdict(list)
    cows = Cow.objects.within(farm.scope).on_farm().filter(farm=farm).order_by("pk")
    for pk, number in cows.values_list("pk", "number"):
        numbers[number.casefold()].append(pk)
    here = {pk for known in numbers.values() for pk in known}
    rows = CowIdentity.objects.within(farm.scope).filter(cow__farm=farm).order_by("pk")
    for cow, value in rows.values_list("cow_id", "value"):
        if cow in here and cow not in others[value.casefold()]:
            others[value.casefold()].append(cow)
    return HerdNumbers(numbers, others)
