from datetime import timedelta
from decimal import Decimal

from invoicing.domain.travel_charge import DistanceUnit
from invoicing.models import Journey
from invoicing.services.change_journey import change_journey
from invoicing.services.forget_journeys import forget_journeys
from invoicing.services.keep_day_journeys import keep_day_journeys
from invoicing.services.note_journey import JourneyWord, note_journey
from tests.factories import NOON, TUESDAY_TEN, finished, make_farm, make_house

LATER = NOON + timedelta(days=7)


def test_the_miles_stay_and_the_name_goes(house):
    high = make_farm(house.business, "High Croft", by=house.owner)
    finished(house.farm, house.van)
    finished(high, house.van, TUESDAY_TEN + timedelta(hours=4))
    drives = keep_day_journeys(van=house.van, day=TUESDAY_TEN.date(), at=LATER)
    change_journey(
        journey=drives[0], distance=Decimal(9), because="Lane by Low Croft shut", at=LATER, by=house.office
    )
    assert forget_journeys(farm=house.farm, at=LATER) == {"names in the mileage log": 2}
    rows = list(Journey.objects.within(house.scope).order_by("position"))
    assert [(row.from_words, row.to_words) for row in rows] == [
        ("Yard", "an erased farm"),
        ("an erased farm", "High Croft"),
        ("High Croft", "Yard"),
    ]
    assert (rows[0].distance, "Low Croft" in rows[0].mended_because) == (9, False)


def test_the_same_name_in_another_business_stays(house):
    stranger = make_house("Elsewhere Trimming")
    finished(stranger.farm, stranger.van)
    keep_day_journeys(van=stranger.van, day=TUESDAY_TEN.date(), at=LATER)
    assert forget_journeys(farm=house.farm, at=LATER) == {}
    assert Journey.objects.within(stranger.scope).filter(to_words="Low Croft").exists()


def test_what_the_farm_was_called_before_goes_too_and_the_next_days_first_drive_stays(house):
    finished(house.farm, house.van)
    keep_day_journeys(van=house.van, day=TUESDAY_TEN.date(), at=LATER)
    house.farm.name = "Lower Croft"
    house.farm.save()
    assert forget_journeys(farm=house.farm, at=LATER) == {"names in the mileage log": 2}
    rows = Journey.objects.within(house.scope).order_by("position")
    assert [(row.from_words, row.to_words) for row in rows] == [
        ("Yard", "an erased farm"),
        ("an erased farm", "Yard"),
    ]
    assert [row.purpose for row in rows] == ["Routine visit", "Home after the last visit"]


def test_a_day_that_was_not_in_the_log_is_put_there_while_the_place_is_known(house):
    finished(house.farm, house.van)
    forget_journeys(farm=house.farm, at=LATER)
    out, home = Journey.objects.within(house.scope).order_by("position")
    assert out.distance == home.distance > 0
    assert (out.to_words, home.from_words) == ("an erased farm", "an erased farm")


def test_a_day_that_is_not_over_waits_for_its_other_visits(house):
    finished(house.farm, house.van)
    assert forget_journeys(farm=house.farm, at=TUESDAY_TEN + timedelta(hours=3)) == {}
    assert not Journey.objects.within(house.scope).exists()


def test_a_drive_put_in_by_hand_keeps_what_else_it_says(house):
    word = JourneyWord(
        TUESDAY_TEN.date(), "Yard", "Low Croft, gate", "Kit to Low Croft", Decimal(4), DistanceUnit.MILE
    )
    note_journey(business=house.business, word=word, at=LATER, by=house.office)
    forget_journeys(farm=house.farm, at=LATER)
    row = Journey.objects.within(house.scope).get()
    assert (row.to_words, row.purpose, row.distance) == ("an erased farm, gate", "Kit to an erased farm", 4)
