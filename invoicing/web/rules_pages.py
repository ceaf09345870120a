"""How a business keeps its money: numbers, rounding, bank, terms, reminders, logo."""

from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from invoicing.documents.logo import printable_logo
from invoicing.selectors.money_rules import money_rules
from invoicing.services.save_money_rules import RulesMakeNoSense, save_money_rules
from invoicing.web.rules_form import MoneyRulesForm
from trimops.accounts.actions import Action
from trimops.kernel.errors import NotFound
from trimops.web.file_answer import picture_answer
from trimops.web.scoped_page import ScopedPage

# Where a fault of the row shows in the form.
FIELDS = {"reminder_days": "days", "fixed_sums": "sums", "logo": "picture"}
PNG = b"\x89PNG"


class MoneyRulesPage(ScopedPage):
    does = Action.KEEP_PRICES
    template = "invoicing/money_rules.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(MoneyRulesForm(instance=money_rules(self.scope)))

    @transaction.atomic
    def post(self, request: HttpRequest) -> HttpResponseBase:
        rules = money_rules(self.scope)
        form = MoneyRulesForm(request.POST, request.FILES, instance=rules.locked() if rules.pk else rules)
        if form.is_valid():
            try:
                save_money_rules(rules=form.rules())
            except RulesMakeNoSense as fault:
                form.add_error(FIELDS.get(fault.field, fault.field), fault.message)
            else:
                messages.success(request, "Kept. Papers from now on go by it; those issued stay as they are.")
                return redirect("money_rules")
        return self._show(form, form.refused_as)

    def _show(self, form: MoneyRulesForm, status: int = 200) -> HttpResponse:
        return self.show({"form": form, "rules": money_rules(self.scope)}, status=status)


class MoneyLogo(ScopedPage):
    """The logo as it is printed."""

    does = Action.KEEP_PRICES

    def get(self, request: HttpRequest) -> HttpResponse:
        logo = money_rules(self.scope).logo
        if not logo:
            raise NotFound("There is no logo.")
        picture = printable_logo(bytes(logo))
        kind = "image/png" if picture.startswith(PNG) else "image/jpeg"
        return picture_answer(picture, kind)
