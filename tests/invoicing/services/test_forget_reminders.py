from invoicing.models import Reminder
from invoicing.services.forget_reminders import forget_reminders
from tests.factories import NOON, make_farm
from tests.invoicing.booked import booked, line


def test_what_never_went_out_goes_and_what_was_approved_stays_as_it_is(house):
    bill = booked(house.farm, line("9"))
    for step, state in enumerate(("approved", "dropped", "proposed"), start=1):
        Reminder.objects.create(
            business=house.business, invoice=bill, step=step, state=state, proposed_at=NOON, pdf=b"%PDF"
        )
    before = Reminder.objects.within(house.scope).filter(state="approved").values().get()
    assert forget_reminders(farm=house.farm) == {"reminders that did not go out": 2}
    assert Reminder.objects.within(house.scope).values().get() == before


def test_those_of_another_farm_stay(house):
    other = make_farm(house.business, "High Croft", by=house.owner)
    Reminder.objects.create(
        business=house.business, invoice=booked(other, line("9")), step=1, proposed_at=NOON
    )
    assert forget_reminders(farm=house.farm) == {}
    assert Reminder.objects.within(house.scope).get().invoice.farm == other
