"""The address of every page there is, by who may open it."""

from collections.abc import Iterator
from datetime import timedelta

from django.conf import settings
from django.urls import reverse
from django.utils import timezone

from farms.services.give_vet_pass import SHOWS, VetWord, give_vet_pass
from invoicing.domain.book_parts import BookPart
from invoicing.models import Agreement, Journey, PriceList, Reminder, TaxRate
from invoicing.services.keep_day_journeys import keep_journeys
from invoicing.services.make_invoice_link import make_invoice_link
from invoicing.services.send_invoice import send_invoice
from tests.browser.audit_pages import audit_pages
from tests.browser.identity_pages import identity_pages
from tests.browser.kit_pages import kit_pages
from tests.browser.message_pages import message_pages, strangers_message_pages
from tests.browser.outgoing_pages import outgoing_pages
from tests.browser.outside_pages import outside_pages
from tests.browser.payments_pages import payments_pages
from tests.browser.protection_pages import protection_pages
from tests.browser.small_round import Round
from tests.browser.stuck_pages import stuck_pages
from tests.browser.watch_pages import watch_by_link_pages, watch_pages
from tests.factories import MONDAY
from trimops.accounts.services.invite_person import invitation_token
from trimops.portal.services.make_link import LinkKind, make_link
from visits.domain.what_happened import WhatHappened

STEPS = {
    "wanted": ("visit_plan", "visit_call_off"),
    "planned": ("visit_confirm", "visit_told", "visit_put_off"),
    "confirmed": ("visit_start",),
    "under_way": ("visit_finish", "crush"),
    "finished": (),
    "called_off": (),
}


def strangers_pages(r: Round) -> Iterator[str]:
    """Without signing in."""
    yield reverse("account_login")
    yield reverse("account_reset_password")
    yield reverse("invitation", args=[invitation_token(r.invited)])
    yield reverse("come_in")
    yield from _vets_pages(r)
    yield from watch_by_link_pages(r)
    yield from strangers_message_pages(r)
    link = make_invoice_link(invoice=r.issued, at=timezone.now())
    yield link.address.removeprefix(settings.SITE_ADDRESS)
    yield reverse("come_in_by_link", args=[make_link(user=r.house.client, kind=LinkKind.TOLD)])


def _vets_pages(r: Round) -> Iterator[str]:
    word = VetWord("A. Vet", "", SHOWS, 30)
    given = give_vet_pass(farm=r.house.farm, word=word, at=timezone.now(), by=r.house.owner)
    yield reverse("vet_desk", args=[given.secret]) + "?q=101"
    yield reverse("vet_cow", args=[given.secret, r.house.cow.pk])


def clients_pages(r: Round) -> Iterator[str]:
    """What a farm client sees."""
    for name in ("home", "farms", "ask", "reports", "cows", "herd", "scores", "money", "calendar"):
        yield reverse(f"portal_{name}")
    yield reverse("portal_ask") + "?what=routine"
    yield reverse("portal_offers") + "?what=urgent&cow_1=101&score_1=UK0-3/2&more=1"
    yield reverse("portal_held", args=[r.held_here.pk])
    yield reverse("portal_draft", args=[r.planned.pk])
    yield reverse("portal_report", args=[r.finished.pk])
    yield reverse("portal_cow", args=[r.house.cow.pk])
    yield from (reverse(name) for name in ("portal_data", "portal_erase", "portal_vet"))


def owners_pages(r: Round) -> Iterator[str]:
    """What an owner sees, and that is every page of the business."""
    yield from _week_and_visits(r)
    yield from _farms(r)
    yield from _rest(r)
    yield from _books(r)
    yield from payments_pages(r)
    yield from kit_pages(r)
    yield from watch_pages(r)
    yield from outside_pages(r.house)
    yield from protection_pages(r)
    yield from audit_pages(r)
    yield from stuck_pages(r.house, r.finished.pk)


def _week_and_visits(r: Round) -> Iterator[str]:
    week = reverse("this_week")
    far = r.wanted.due_until + timedelta(days=90)
    yield from (week, f"{week}?week={r.wanted.due_from}", f"{week}?week={far}")
    yield from _something_changed(r)
    yield reverse("week_plan", args=[r.thinking.pk])
    first = r.replanned.plan["shifts"][0]["stops"][0]["job"].removeprefix("visit-")
    yield reverse("week_stop", args=[r.replanned.pk, first])
    yield reverse("visit_list")
    yield reverse("visit_list") + "?state=finished"
    for state, steps in STEPS.items():
        visit = getattr(r, state)
        yield reverse("visit", args=[visit.pk])
        yield from (reverse(step, args=[visit.pk]) for step in steps)
    yield reverse("visit_report_page", args=[r.finished.pk])
    when = reverse("farm_when", args=[r.house.farm.pk])
    said = "asked_by=Phone&head_count=2&corrective_count=1&score=&note="
    yield from (when, f"{when}?reason=routine&{said}", f"{when}?reason=urgent&{said}")
    yield reverse("held_hour", args=[r.held.pk])
    yield reverse("draft", args=[r.planned.pk])


def _something_changed(r: Round) -> Iterator[str]:
    plan = r.replanned
    yield reverse("week_changed", args=[plan.monday])
    for what in WhatHappened:
        yield reverse("week_changed_what", args=[plan.monday, what.value])
    yield reverse("replan", args=[plan.pk])
    yield reverse("plan_against", args=[plan.pk, plan.pk])


def _farms(r: Round) -> Iterator[str]:
    farm, cow = r.house.farm, r.house.cow
    yield from (reverse("farm_list"), reverse("farm_list") + "?q=zz", reverse("farm_new"))
    for name in (
        "farm",
        "farm_edit",
        "milking",
        "herd_list",
        "cow_new",
        "visit_ask",
        "farm_clients",
        "contacts",
        "draft_rules",
        "mobility",
        "herd_figures",
        "vet_passes",
        "farm_data",
        "farm_erase",
    ):
        yield reverse(name, args=[farm.pk])
    yield reverse("farm_client", args=[farm.pk, r.access.pk])
    yield reverse("cow", args=[cow.pk])
    yield reverse("cow_edit", args=[farm.pk, cow.pk])
    yield reverse("herd_preview", args=[farm.pk, r.herd_list.pk])


def _rest(r: Round) -> Iterator[str]:
    yield from message_pages(r)
    yield from (
        reverse(name) for name in ("invoice_list", "prices", "payers", "people", "business", "calendar")
    )
    yield from (reverse(name) for name in ("vans", "van_new", "figures", "account_change_password"))
    yield reverse("crush_days")
    yield from _prices(r)
    yield from (reverse("invoice", args=[invoice.pk]) for invoice in (r.draft, r.issued))
    yield from _mail(r)
    yield from _bills(r)
    yield reverse("van", args=[r.house.van.pk])
    yield reverse("membership_end", args=[r.invited.pk])


def _prices(r: Round) -> Iterator[str]:
    """Prices and tax, and how a farm is billed that has something agreed."""
    scope, farm = r.house.scope, r.house.farm
    Agreement.objects.create(
        business=farm.business, farm=farm, kind="percent", amount=5, why="Herd", valid_from=MONDAY
    )
    yield from (reverse(name) for name in ("price_list_new", "tax_rates", "money_rules"))
    yield reverse("tax_rates") + "?take=zero"
    yield reverse("price_list", args=[PriceList.objects.within(scope).get().pk])
    yield reverse("tax_rate", args=[TaxRate.objects.within(scope).get(code="low").pk])
    yield from (reverse(name, args=[farm.pk]) for name in ("agreements", "farm_terms"))


def _books(r: Round) -> Iterator[str]:
    """The books with what is in them: a reminder put forward, and the drives of the visits that are over."""
    now, business = timezone.now(), r.house.business
    reminder = Reminder.objects.create(business=business, invoice=r.issued, step=1, proposed_at=now)
    keep_journeys(business=business, first=(now - timedelta(days=20)).date(), last=now.date(), at=now)
    names = (
        "reminders",
        "reference_rates",
        "books",
        "mileage",
        "journey_new",
        "mileage_rates",
        "period_lock",
    )
    yield from (reverse(name) for name in names)
    yield reverse("reminder", args=[reminder.pk])
    yield from (reverse("book_part", args=[part.value]) for part in (BookPart.JOURNAL, BookPart.OPEN))
    yield reverse("journey", args=[Journey.objects.within(r.house.scope).first().pk])


def _bills(r: Round) -> Iterator[str]:
    """From what is ready to a credit note."""
    yield from (
        reverse(name) for name in ("bill_ready", "invoice_drafts", "invoice_issue_all", "invoice_issued")
    )
    for name in ("invoice_line_new", "invoice_whole", "invoice_head", "invoice_undo"):
        yield reverse(name, args=[r.draft.pk])
    yield reverse("invoice_line", args=[r.draft.lines.within(r.house.scope).first().pk])
    yield reverse("invoice_credit", args=[r.issued.pk])
    yield from (reverse(name, args=[r.finished.pk]) for name in ("bill_late", "bill_leave"))


def _mail(r: Round) -> Iterator[str]:
    to = ["farm@example.invalid"]
    (sending,) = send_invoice(invoice=r.issued, at=timezone.now(), by=r.house.owner, addresses=to)
    yield from (reverse(name, args=[r.issued.pk]) for name in ("invoice_send", "invoice_links"))
    yield reverse("sendings") + "?show=all"
    yield from outgoing_pages(r.house, sending.outgoing_id)
    yield from identity_pages(r.house)
