"""A row of each kind of what was done at a farm, for the addresses of the API that name one."""

from farms.models import Cow, Farm
from tests.factories import MONDAY, NOON, House
from visits.domain.mobility import MobilityScale
from visits.models import DraftChange, IssuedReport, Recheck, ReferralLetter, Trim
from visits.services.note_scores import CowScore, ScoringWord, note_scores


def work_of(house: House, farm: Farm, cow: Cow, trim: Trim) -> dict[str, object]:
    """Key of the ring -> primary key; the cow was done by `trim`, with a report and a letter, and one was struck."""
    word = ScoringWord(MONDAY, MobilityScale.UK, (CowScore(cow.pk, 2),))
    change = DraftChange.objects.within(house.scope).get(visit__farm=farm)
    return {
        "scoring": note_scores(farm=farm, word=word, at=NOON, by=house.client).pk,
        "report": IssuedReport.objects.within(house.scope).get(visit_id=trim.visit_id).pk,
        "letter": ReferralLetter.objects.within(house.scope).get(trim=trim).pk,
        "recheck": Recheck.objects.within(house.scope).filter(from_trim=trim)[0].pk,
        "draft_visit": change.visit_id,
    }
