"""The visits, one visit, and asking for one."""

from datetime import timedelta

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Cow, Farm
from trimops.accounts.actions import Action
from trimops.kernel.clock import local_day
from trimops.web.scoped_page import ScopedPage
from visits.domain.visit_states import VisitState
from visits.models import Block, Recheck, Visit
from visits.selectors.cow_versions import cow_versions
from visits.selectors.crush_story import crush_story
from visits.selectors.day_arrivals import arrival_at
from visits.selectors.draft_view import changed_list_time
from visits.selectors.expected_length import asked_of, expected_by
from visits.selectors.issued_letters import cows_for_vet
from visits.selectors.issued_reports import report_state
from visits.selectors.kit.visit_materials import visit_materials
from visits.selectors.kit.visit_uses import visit_uses
from visits.selectors.learned_rule import rule_in_use
from visits.selectors.messages.told_lines import told_lines
from visits.selectors.visit_story import trims_with_feet, visit_story
from visits.services.ask_visit import ask_visit
from visits.web.forms import VisitWishForm

PER_PAGE = 40


class VisitListPage(ScopedPage):
    """Open visits, or those of one state."""

    does = Action.SEE_DIARY
    template = "visits/visit_list.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        wanted = request.GET.get("state", "")
        rows = Visit.objects.within(self.scope).select_related("farm", "van")
        if wanted in VisitState.__members__.values():
            rows = rows.in_state(VisitState(wanted)).order_by("-planned_start", "-id")
        else:
            rows = rows.open().order_by("due_until", "id")
        page = Paginator(rows, PER_PAGE).get_page(request.GET.get("page"))
        return self.show({"page": page, "state": wanted, "states": list(VisitState)})


class VisitPage(ScopedPage):
    does = Action.SEE_DIARY
    template = "visits/visit.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        visit = self.fetch(Visit, pk, "farm", "van", "business")
        length = expected_by(rule_in_use(self.scope).rule, asked_of(visit))
        story = visit_story(self.scope, visit)
        words: dict[str, object] = {
            "length": length,
            "stop": arrival_at(visit, self.now),
            "story": story,
            "trims_done": len(story.trims),
            "list_time": changed_list_time(visit, self.now),
            "told_lines": told_lines(self.scope, [visit]).get(visit.pk),
        }
        if uses := visit_uses(self.scope, visit):
            words |= {"uses": uses, "materials": visit_materials(self.scope, [visit])[visit.pk]}
        crush = {"crush": crush_story(self.scope, visit), "at_crush": self.seat.allows(Action.WORK_AT_CRUSH)}
        papers: dict[str, object] = {"for_vet": cows_for_vet(self.scope, visit)}
        if visit.visit_state is VisitState.FINISHED:
            papers["report"] = report_state(self.scope, visit)
        return self.show({"visit": visit, "farm": visit.farm, **words, **crush, **papers})


class VisitAskPage(ScopedPage):
    """Ask for a visit to a farm."""

    does = Action.KEEP_VISITS
    template = "visits/visit_ask.html"

    def get(self, request: HttpRequest, farm_pk: int) -> HttpResponse:
        farm = self.fetch(Farm, farm_pk)
        today = local_day(self.now, self.seat.business.zone)
        first = {"due_from": today, "due_until": today + timedelta(days=13), "head_count": farm.routine_cows}
        return self.show({"farm": farm, "form": VisitWishForm(farm=farm, initial=first)})

    def post(self, request: HttpRequest, farm_pk: int) -> HttpResponseBase:
        farm = self.fetch(Farm, farm_pk)
        form = VisitWishForm(request.POST, farm=farm)
        if not form.is_valid():
            return self.show({"farm": farm, "form": form}, status=400)
        visit = ask_visit(farm=farm, wish=form.wish(), at=self.now, by=self.seat.user)
        messages.success(request, f"The visit to {farm} is wanted; it goes into the next plan.")
        return redirect("visit", visit.pk)


class CowPage(ScopedPage):
    """One cow: what is due, and everything that was done."""

    does = Action.SEE_EVERY_FARM
    template = "visits/cow.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        cow = self.fetch(Cow, pk, "farm")
        trims = trims_with_feet(self.scope).filter(cow=cow).newest_first()
        page = Paginator(trims, 20).get_page(request.GET.get("page"))
        versions = cow_versions(self.scope, cow)
        return self.show(
            {
                "cow": cow,
                "farm": cow.farm,
                "identities": cow.identities.within(self.scope),
                "blocks": Block.objects.within(self.scope).filter(cow=cow, off_on__isnull=True),
                "rechecks": Recheck.objects.within(self.scope).open().filter(cow=cow),
                "page": page,
                "trims": [(trim, versions.get(trim.visit_id)) for trim in page],
                "taken_back": [line for line in versions.values() if line.is_taken_back],
                "today": local_day(self.now, self.seat.business.zone),
            }
        )
