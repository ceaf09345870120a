import json

from farms.models import Contact
from tests.factories import NOON
from trimops.accounts.roles import Role
from trimops.audit.models import AuditEntry
from trimops.audit.services.note_handed_out import note_handed_out
from trimops.watch.doing import Doing, done_by


def test_who_took_whose_data_stands_in_the_trail(house):
    contact = Contact.objects.create(business=house.business, farm=house.farm, name="Ida", part="herd")
    with done_by(Doing(by=house.owner.pk, via="POST portal_data_all", seen_from="192.0.2.7")):
        for row in (house.farm, contact, house.memberships[Role.TRIMMER]):
            note_handed_out(row=row, words="everything", at=NOON)
    found = AuditEntry.objects.within(house.scope).filter(kind="handed_out").order_by("id")
    assert [(entry.what, entry.by, entry.at) for entry in found] == [
        (what, house.owner, NOON) for what in ("farms.farm", "farms.contact", "accounts.membership")
    ]
    assert {json.loads(entry.after)["handed_out"] for entry in found} == {"everything"}
    assert found[1].under == f"farms.farm:{house.farm.pk}"
