from datetime import timedelta

from tests.factories import NOON
from tests.trimops.outbox.messages import now, put
from trimops.errands.models import Errand
from trimops.outbox.services.start_sending import start_sending


def test_the_errand_it_has_is_brought_forward(house, django_capture_on_commit_callbacks, mailoutbox):
    row = put(house)
    errands = Errand.objects.within(house.scope)
    errands.update(due_at=NOON + timedelta(days=9000), handed_out_at=NOON)
    with django_capture_on_commit_callbacks(execute=True):
        start_sending(row=row, at=NOON)
    assert (now(row).state, len(mailoutbox), errands.get().state) == ("went", 1, "done")


def test_where_it_has_none_any_more_it_gets_one(house):
    row, other = put(house), put(house)
    errands = Errand.objects.within(house.scope)
    errands.filter(ids={"outgoing_id": row.pk}).update(state="stuck")
    start_sending(row=row, at=NOON)
    assert list(
        errands.filter(ids={"outgoing_id": row.pk}).values_list("state", flat=True).order_by("id")
    ) == [
        "stuck",
        "waiting",
    ]
    assert errands.filter(ids={"outgoing_id": other.pk}).count() == 1
