from tests.factories import make_house
from tests.trimops.outbox.messages import put
from trimops.outbox.domain.outgoing_states import Topic
from trimops.outbox.models import Outgoing, OutgoingEvent, OutgoingPart
from trimops.outbox.senders.ready import Part
from trimops.outbox.services.forget_outgoing import forget_outgoing


def test_what_is_about_the_farm_or_went_to_its_people_goes_and_nothing_else(
    house, django_capture_on_commit_callbacks, mailoutbox
):
    far = make_house("Far Side")
    with django_capture_on_commit_callbacks(execute=True):
        put(house, farm_id=house.farm.pk, parts=[Part("a.pdf", "application/pdf", b"%PDF")])
        put(house, address="Her@Farm.example")
        kept = [put(house), put(far, farm_id=house.farm.pk), put(far, address="her@farm.example")]
        assert forget_outgoing(scope=house.scope, farm_id=house.farm.pk, addresses=["her@farm.example"]) == 2
    assert len(mailoutbox) == 3
    rows = [*Outgoing.objects.within(house.scope), *Outgoing.objects.within(far.scope)]
    assert {row.pk for row in rows} == {row.pk for row in kept}
    assert not OutgoingPart.objects.within(house.scope).exists()
    assert {event.outgoing_id for event in OutgoingEvent.objects.within(house.scope)} == {kept[0].pk}


def test_nothing_named_drops_nothing(house):
    put(house)
    assert forget_outgoing(scope=house.scope, addresses=["", ""]) == 0
    assert Outgoing.objects.within(house.scope).count() == 1


def test_a_mail_about_the_work_of_many_farms_goes_if_it_names_this_one(house):
    put(house, topic=Topic.EVENING, body="08:30 Low Croft: 12 cows")
    kept = [put(house, topic=Topic.EVENING, body="08:30 High Croft"), put(house, body="08:30 Low Croft")]
    assert forget_outgoing(scope=house.scope, name="Low Croft") == 1
    assert set(Outgoing.objects.within(house.scope)) == set(kept)
