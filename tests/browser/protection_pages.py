"""The pages of what is kept of a person, and for how long."""

from collections.abc import Iterator

from django.urls import reverse

from tests.browser.small_round import Round
from trimops.accounts.roles import Role


def protection_pages(r: Round) -> Iterator[str]:
    """What the owner sees of them; everybody sees their own."""
    office = r.house.memberships[Role.OFFICE].pk
    yield from (reverse("retention"), reverse("own_data"))
    yield from (reverse("person_data", args=[office]), reverse("person_erase", args=[office]))
