"""A herd as the resources of the exchange, kind by kind."""

from collections.abc import Iterator, Mapping
from datetime import datetime

from visits.domain.ade.animals import animal, lactations, location
from visits.domain.ade.attention import wanting_attention
from visits.domain.ade.diagnoses import lesions_seen
from visits.domain.ade.herd_out import HerdOut
from visits.domain.ade.lists import JsonObject
from visits.domain.ade.mobility import scores_told
from visits.domain.ade.treatments import work_done


def ade_documents(
    herd: HerdOut, told_at: datetime, *, common_procedure: bool = False
) -> Mapping[str, Iterator[JsonObject]]:
    """File name without ending -> its resources, made as they are taken: a large herd has a hundred thousand.

    `told_at` is the moment of the telling, for what keeps no moment itself.
    """
    cows = {cow.key: cow for cow in herd.cows}
    farm = herd.farm
    seen = (lesions_seen(farm, cows[trim.cow], trim) for trim in herd.trims)
    return {
        "location": iter([location(farm, told_at)]),
        "animals": (animal(cow, farm, told_at) for cow in herd.cows),
        "lactations": (told for cow in herd.cows for told in lactations(cow, told_at)),
        "diagnoses": (event for event in seen if event is not None),
        "treatments": (
            event
            for trim in herd.trims
            for event in work_done(farm, cows[trim.cow], trim, common_procedure=common_procedure)
        ),
        "mobility": scores_told(herd, cows),
        "attention": wanting_attention(herd, cows),
    }
