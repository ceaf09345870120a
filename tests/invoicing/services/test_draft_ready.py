"""All that is ready is drafted; what is refused holds up no other."""

from invoicing.models import Price
from invoicing.selectors.ready_to_bill import ready_to_bill
from invoicing.services.draft_ready import draft_ready
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_house,
    make_prices,
    put_down,
    under_way,
)
from tests.invoicing.services.billing import worked
from visits.domain.actions import BlockKind


def test_one_without_a_price_is_told_and_the_others_are_drafted(house):
    make_prices(house.business)
    Price.objects.within(house.scope).filter(item="shoe").delete()
    begun = under_way(house.farm, house.van, TUESDAY_TEN)
    put_down(begun, house.cow, blocked_foot(kind=BlockKind.SHOE))
    shod = finish(begun, house.trimmer)
    plain = worked(house, 1, days=1)
    result = draft_ready(business=house.business, at=NOON)
    assert [draft.visit for draft in result.drafts.values()] == [plain]
    ((visit, why),) = result.refused
    assert visit == shod
    assert "“Shoe”" in why


def test_a_visit_that_costs_nothing_is_told_and_another_business_is_left_alone(house):
    make_prices(house.business)
    Price.objects.within(house.scope).update(unit_price=0)
    visit = worked(house, 1)
    assert draft_ready(business=make_house("Fell & Beck").business, at=NOON).drafts == {}
    assert draft_ready(business=house.business, at=NOON).free == [visit]
    told = ready_to_bill(house.scope, NOON.date())
    assert (told.visit_count, told.left, told.late) == (0, [visit], []), "nobody is asked for it again"
