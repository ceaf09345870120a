"""What the demo's business has switched on: messages to its farms, the evening plan and list, whom to tell."""

from datetime import datetime

from farms.domain.told_by import ToldBy
from farms.models import Contact
from trimops.accounts.services.save_business import save_business
from trimops.accounts.services.save_own_ways import save_own_ways
from trimops.kernel.scope import Scope
from trimops.portal.demo.build_people import Crew
from visits.domain.messages.message_kinds import MessageKind
from visits.models import WatchContact
from visits.services.lone_watch.save_watch_contact import save_watch_contact
from visits.services.messages.save_message_rules import switch_message

PHONE = "+44 1632 960101"
WATCHERS = (
    ("The office at the yard", "+44 1632 960100", "office@quennerdale-trimming.example"),
    ("Neighbour at the yard", "+44 1632 960102", "neighbour@quennerdale-trimming.example"),
)


def let_it_run(crew: Crew, at: datetime) -> None:
    """Switch it on. Herd managers are told by mail; the watch itself stays off until a mail server is set."""
    business = crew.business
    business.region, business.proposes_weeks = "ENG", True
    save_business(business=business)
    for role in ("owner", "trimmer"):
        save_own_ways(membership=crew.memberships[role], phone=PHONE, evening_mail=True)
    managers = Contact.objects.within(Scope(business.pk)).filter(gets_reports=True)
    managers.update(told_by=ToldBy.MAIL.value)
    for kind in MessageKind:
        if kind.is_switched:
            switch_message(business=business, kind=kind, on=True, at=at)
    for turn, (name, phone, email) in enumerate(WATCHERS, 1):
        contact = WatchContact(business=business, name=name, phone=phone, email=email, turn=turn)
        save_watch_contact(contact=contact)
