"""By which rules a farm's draft lists are made, and where each comes from."""

from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Farm
from trimops.accounts.actions import Action
from trimops.web.scoped_page import ScopedPage
from visits.domain.draft_rules import RULE_SETS
from visits.selectors.draft_rules_in_use import RulesInUse, rules_in_use
from visits.services.choose_draft_rules import DraftRulesMakeNoSense, choose_draft_rules
from visits.web.draft_forms import DraftRulesForm, RuleSetForm


class DraftRulesPage(ScopedPage):
    does = Action.KEEP_VISITS
    template = "visits/draft_rules.html"

    def get(self, request: HttpRequest, farm_pk: int) -> HttpResponse:
        farm = self.fetch(Farm, farm_pk, "business")
        using = rules_in_use(farm)
        return self._page(farm, using, DraftRulesForm(using=using), 200)

    @transaction.atomic
    def post(self, request: HttpRequest, farm_pk: int) -> HttpResponseBase:
        farm = self.fetch(Farm, farm_pk, "business")
        farm.locked()
        using = rules_in_use(farm)
        if "rule_set" in request.POST:
            chosen = RuleSetForm(request.POST)
            if chosen.is_valid():
                return self._keep(farm, chosen.cleaned_data["rule_set"], {})
            return self._page(farm, using, DraftRulesForm(using=using), 400)
        form = DraftRulesForm(request.POST, using=using)
        if form.is_valid():
            try:
                return self._keep(farm, using.rule_set.id, form.own())
            except DraftRulesMakeNoSense as fault:
                form.add_error(None, fault.message)
        return self._page(farm, using, form, form.refused_as)

    def _keep(self, farm: Farm, rule_set: str, own: dict[str, object]) -> HttpResponseBase:
        choose_draft_rules(farm=farm, rule_set=rule_set, own=own, at=self.now, by=self.seat.user)
        messages.success(self.request, "The lists of this farm go by these rules now.")
        return redirect("draft_rules", farm.pk)

    def _page(self, farm: Farm, using: RulesInUse, form: DraftRulesForm, status: int) -> HttpResponse:
        sets = list(RULE_SETS.values())
        return self.show({"farm": farm, "using": using, "form": form, "sets": sets}, status=status)
