"""What the farm itself notes: which cows it brings, and how they walk."""

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.portal.web.client_page import ClientPage
from visits.web.draft_pages import DraftEditPage
from visits.web.mobility_pages import ScoresPage


class PortalDraftPage(DraftEditPage, ClientPage):
    """The draft list of a visit. Everybody of the farm sees it; striking and adding is a right of its own."""

    does = {"get": Action.SEE_OWN_FARM, "post": Action.KEEP_OWN_DRAFT}
    template = "portal/draft.html"
    address = "portal_draft"
    cow_page = "portal_cow"


class PortalScoresPage(ScoresPage, ClientPage):
    does = Action.KEEP_OWN_DRAFT
    template = "portal/scores.html"
    address = "portal_scores"

    def farm_of(self, **kwargs: int) -> Farm:
        return self.farm()
