"""What the planner keeps of a farm is blotted out; plans of other farms are not touched."""

from tests.factories import NOON, make_farm, wanted
from visits.domain.blot_farm import STAND_IN
from visits.models import VisitEvent, WeekPlan
from visits.services.forget_in_plans import forget_in_plans
from visits.services.visit_change import add_event


def test_a_plan_without_the_farm_is_left_as_it_is_and_one_with_it_can_still_be_read(house, proposed):
    second = make_farm(house.business, "High Croft", by=house.owner, latitude="54.3210")
    wanted(second)
    plan = proposed()
    plan.because = "Van 1 runs late at High Croft"
    plan.save()
    add_event(wanted(house.farm), before="", at=NOON, by=None, note="makes room for High Croft")
    assert forget_in_plans(farm=house.farm) == 0, "it is in no plan"
    assert forget_in_plans(farm=second) == 1
    after = WeekPlan.objects.within(house.scope).get(pk=plan.pk)
    assert after.because == STAND_IN
    notes = VisitEvent.objects.within(house.scope).filter(visit__farm=house.farm)
    assert STAND_IN in notes.values_list("note", flat=True)
    assert not notes.filter(note__contains="High Croft").exists()
    assert "54.321" not in str(after.problem)
    assert after.plan == plan.plan
    assert forget_in_plans(farm=second) == 0, "it is gone"


def test_the_history_of_another_farm_keeps_words_that_the_name_is_only_a_part_of(house):
    ash = make_farm(house.business, "Ash", by=house.owner)
    event = add_event(wanted(house.farm), before="", at=NOON, by=None, note="the van is washed")
    forget_in_plans(farm=ash)
    event.refresh_from_db()
    assert event.note == "the van is washed"


def test_a_note_of_another_farm_loses_the_name_and_nothing_else(house):
    second = make_farm(house.business, "High Croft", by=house.owner)
    beside, own = wanted(house.farm, note="After high croft, gate code 4"), wanted(second, note="High Croft")
    forget_in_plans(farm=second)
    beside.refresh_from_db()
    own.refresh_from_db()
    assert beside.note == "After an erased farm, gate code 4"
    assert own.note == "High Croft", "its own rows are not the planner's affair"
