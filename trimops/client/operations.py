# Made of trimops/api/openapi.json by tests/trimops/client/making.py (`make client`); change that, not this.
"""Each operation of the API, by its id."""

from collections.abc import Iterator
from typing import Literal

from trimops.client import bodies
from trimops.client.calls import Calls


class Operations(Calls):
    """One method an operation. A body is as bodies.py says; `key` an Idempotency-Key, `match` an ETag, of your own."""

    def accept_bank_proposals(self, body: bodies.AcceptWordRequest, *, key: str = "") -> bodies.AcceptedTold:
        """Accept proposals."""
        shown: bodies.AcceptedTold = self.done("/bank-entries/accept/", body, key)
        return shown

    def accept_plan(self, id: int, body: bodies.FarmsAgreedWordRequest, *, key: str = "") -> bodies.PlanShown:
        """Accept the plan."""
        shown: bodies.PlanShown = self.done(f"/plans/{id}/accept/", body, key)
        return shown

    def add_agreement(
        self, id: int, body: bodies.AgreedWordRequest, *, key: str = ""
    ) -> bodies.AgreementShown:
        """Agree something with a farm."""
        shown: bodies.AgreementShown = self.done(f"/farms/{id}/agreements/", body, key)
        return shown

    def add_bank_file(self, body: bodies.FileWordRequest, *, key: str = "") -> bodies.ReadingTold:
        """Hand in a file of the bank."""
        shown: bodies.ReadingTold = self.done("/bank-files/", body, key)
        return shown

    def add_blade(self, body: bodies.NewBladeWordRequest, *, key: str = "") -> bodies.BladeShown:
        """One more knife or disc."""
        shown: bodies.BladeShown = self.done("/kit/blades/", body, key)
        return shown

    def add_consumable(self, body: bodies.ConsumableWordRequest, *, key: str = "") -> bodies.ConsumableShown:
        """One more consumable."""
        shown: bodies.ConsumableShown = self.done("/kit/consumables/", body, key)
        return shown

    def add_contact(self, id: int, body: bodies.ContactWordRequest, *, key: str = "") -> bodies.ContactShown:
        """One more person of a farm."""
        shown: bodies.ContactShown = self.done(f"/farms/{id}/contacts/", body, key)
        return shown

    def add_cow(self, id: int, body: bodies.CowWordRequest, *, key: str = "") -> bodies.CowShown:
        """One more cow of a farm."""
        shown: bodies.CowShown = self.done(f"/farms/{id}/cows/", body, key)
        return shown

    def add_draft_cow(
        self, id: int, body: bodies.DraftCowWordRequest, *, key: str = ""
    ) -> bodies.DraftListShown:
        """Bring this cow."""
        shown: bodies.DraftListShown = self.done(f"/visits/{id}/draft/add/", body, key)
        return shown

    def add_draft_line(
        self, id: int, body: bodies.HandLineWordRequest, *, key: str = ""
    ) -> bodies.DraftShown:
        """Put a line on a draft."""
        shown: bodies.DraftShown = self.done(f"/drafts/{id}/lines/", body, key)
        return shown

    def add_farm(self, body: bodies.FarmWordRequest, *, key: str = "") -> bodies.FarmShown:
        """One more farm."""
        shown: bodies.FarmShown = self.done("/farms/", body, key)
        return shown

    def add_outside_calendar(
        self, id: int, body: bodies.OutsideWordRequest, *, key: str = ""
    ) -> bodies.OutsideShown:
        """One more calendar."""
        shown: bodies.OutsideShown = self.done(f"/vans/{id}/outside-calendars/", body, key)
        return shown

    def add_payer(self, body: bodies.PayerWordRequest, *, key: str = "") -> bodies.PayerShown:
        """One more payer."""
        shown: bodies.PayerShown = self.done("/payers/", body, key)
        return shown

    def add_van(self, body: bodies.VanWordRequest, *, key: str = "") -> bodies.VanShown:
        """One more van."""
        shown: bodies.VanShown = self.done("/vans/", body, key)
        return shown

    def add_watch_contact(
        self, body: bodies.WatchContactWordRequest, *, key: str = ""
    ) -> bodies.WatchContactShown:
        """One more who is told."""
        shown: bodies.WatchContactShown = self.done("/watch-contacts/", body, key)
        return shown

    def apply_herd_list(self, id: int, *, key: str = "") -> bodies.HerdListShown:
        """Apply a herd list."""
        shown: bodies.HerdListShown = self.done(f"/herd-lists/{id}/apply/", None, key)
        return shown

    def approve_reminder(self, id: int, *, key: str = "") -> bodies.ApprovedTold:
        """Approve a reminder."""
        shown: bodies.ApprovedTold = self.done(f"/reminders/{id}/approve/", None, key)
        return shown

    def ask_erasure(self, id: int, body: bodies.ErasureWordRequest, *, key: str = "") -> bodies.ErasureShown:
        """Ask that what is known of the farm be erased."""
        shown: bodies.ErasureShown = self.done(f"/farms/{id}/erasures/", body, key)
        return shown

    def ask_plan(self, week: str, *, key: str = "") -> bodies.PlanShown:
        """Ask for a plan."""
        shown: bodies.PlanShown = self.done(f"/weeks/{week}/plans/", None, key)
        return shown

    def ask_visit(self, body: bodies.FarmWishWordRequest, *, key: str = "") -> bodies.VisitShown:
        """Ask for a visit."""
        shown: bodies.VisitShown = self.done("/visits/", body, key)
        return shown

    def bill_after_all(self, id: int, *, key: str = "") -> bodies.PiecesTold:
        """Bill it after all."""
        shown: bodies.PiecesTold = self.done(f"/visits/{id}/bill-after-all/", None, key)
        return shown

    def bring_back_plan(self, id: int, *, key: str = "") -> bodies.PlanShown:
        """Bring it back."""
        shown: bodies.PlanShown = self.done(f"/plans/{id}/bring-back/", None, key)
        return shown

    def bring_bank_entry_back(self, id: int, *, key: str = "") -> bodies.BankEntryShown:
        """Bring a booking back."""
        shown: bodies.BankEntryShown = self.done(f"/bank-entries/{id}/bring-back/", None, key)
        return shown

    def buy_stock(self, body: bodies.PurchaseWordRequest, *, key: str = "") -> bodies.MovementsTold:
        """Stock was bought."""
        shown: bodies.MovementsTold = self.done("/kit/purchases/", body, key)
        return shown

    def call_off_order(
        self, id: int, body: bodies.CallOffOrderWordRequest, *, key: str = ""
    ) -> bodies.SupplyOrderShown:
        """Call an order off."""
        shown: bodies.SupplyOrderShown = self.done(f"/kit/orders/{id}/call-off/", body, key)
        return shown

    def call_off_visit(self, id: int, body: bodies.WhyOffWordRequest, *, key: str = "") -> bodies.VisitShown:
        """Call it off."""
        shown: bodies.VisitShown = self.done(f"/visits/{id}/call-off/", body, key)
        return shown

    def change_blade(
        self, id: int, body: bodies.PatchedBladeWordRequest, *, match: str = ""
    ) -> bodies.BladeShown:
        """Change a knife or disc."""
        shown: bodies.BladeShown = self.changed("PATCH", f"/kit/blades/{id}/", body, match)
        return shown

    def change_blade_state(
        self, id: int, body: bodies.BladeStateWordTakenRequest, *, key: str = ""
    ) -> bodies.BladeShown:
        """Say what becomes of a knife or disc."""
        shown: bodies.BladeShown = self.done(f"/kit/blades/{id}/state/", body, key)
        return shown

    def change_consumable(
        self, id: int, body: bodies.PatchedConsumableWordRequest, *, match: str = ""
    ) -> bodies.ConsumableShown:
        """Change a consumable."""
        shown: bodies.ConsumableShown = self.changed("PATCH", f"/kit/consumables/{id}/", body, match)
        return shown

    def change_contact(
        self, id: int, body: bodies.PatchedContactWordRequest, *, match: str = ""
    ) -> bodies.ContactShown:
        """Change a person of a farm."""
        shown: bodies.ContactShown = self.changed("PATCH", f"/contacts/{id}/", body, match)
        return shown

    def change_cow(self, id: int, body: bodies.PatchedCowWordRequest, *, match: str = "") -> bodies.CowShown:
        """Change a cow."""
        shown: bodies.CowShown = self.changed("PATCH", f"/cows/{id}/", body, match)
        return shown

    def change_draft(
        self, id: int, body: bodies.PatchedHeadWordRequest, *, match: str = ""
    ) -> bodies.DraftShown:
        """Change what stands above and below the lines."""
        shown: bodies.DraftShown = self.changed("PATCH", f"/drafts/{id}/", body, match)
        return shown

    def change_draft_line(
        self, id: int, body: bodies.PatchedLineWordRequest, *, match: str = ""
    ) -> bodies.LineShown:
        """Change a line of a draft."""
        shown: bodies.LineShown = self.changed("PATCH", f"/draft-lines/{id}/", body, match)
        return shown

    def change_farm(
        self, id: int, body: bodies.PatchedFarmWordRequest, *, match: str = ""
    ) -> bodies.FarmShown:
        """Change a farm."""
        shown: bodies.FarmShown = self.changed("PATCH", f"/farms/{id}/", body, match)
        return shown

    def change_farm_terms(
        self, id: int, body: bodies.PatchedTermsWordRequest, *, match: str = ""
    ) -> bodies.TermsShown:
        """Change how a farm is billed."""
        shown: bodies.TermsShown = self.changed("PATCH", f"/farms/{id}/terms/", body, match)
        return shown

    def change_message_rules(
        self, body: bodies.PatchedMessageHoursWordRequest, *, match: str = ""
    ) -> bodies.MessageHoursShown:
        """Change when farms are told."""
        shown: bodies.MessageHoursShown = self.changed("PATCH", "/message-rules/", body, match)
        return shown

    def change_money_rules(
        self, body: bodies.PatchedRulesWordRequest, *, match: str = ""
    ) -> bodies.RulesShown:
        """Change how the money is kept."""
        shown: bodies.RulesShown = self.changed("PATCH", "/money-rules/", body, match)
        return shown

    def change_payer(
        self, id: int, body: bodies.PatchedPayerWordRequest, *, match: str = ""
    ) -> bodies.PayerShown:
        """Change a payer."""
        shown: bodies.PayerShown = self.changed("PATCH", f"/payers/{id}/", body, match)
        return shown

    def change_price_list(
        self, id: int, body: bodies.PatchedPriceListWordRequest, *, match: str = ""
    ) -> bodies.PriceListShown:
        """Mend a price list."""
        shown: bodies.PriceListShown = self.changed("PATCH", f"/price-lists/{id}/", body, match)
        return shown

    def change_tax_rate(
        self, id: int, body: bodies.PatchedTaxRateWordRequest, *, match: str = ""
    ) -> bodies.TaxRateShown:
        """Mend a tax rate."""
        shown: bodies.TaxRateShown = self.changed("PATCH", f"/tax-rates/{id}/", body, match)
        return shown

    def change_van(self, id: int, body: bodies.PatchedVanWordRequest, *, match: str = "") -> bodies.VanShown:
        """Change a van."""
        shown: bodies.VanShown = self.changed("PATCH", f"/vans/{id}/", body, match)
        return shown

    def change_watch_contact(
        self, id: int, body: bodies.PatchedWatchContactWordRequest, *, match: str = ""
    ) -> bodies.WatchContactShown:
        """Change who is told."""
        shown: bodies.WatchContactShown = self.changed("PATCH", f"/watch-contacts/{id}/", body, match)
        return shown

    def change_watch_rules(
        self, body: bodies.PatchedWatchRulesWordRequest, *, match: str = ""
    ) -> bodies.WatchRulesShown:
        """Switch the watch on or off."""
        shown: bodies.WatchRulesShown = self.changed("PATCH", "/watch-rules/", body, match)
        return shown

    def choose_draft_rules(
        self, id: int, body: bodies.PatchedFarmRulesWordRequest, *, match: str = ""
    ) -> bodies.FarmRulesShown:
        """Choose a farm's draft rules."""
        shown: bodies.FarmRulesShown = self.changed("PATCH", f"/farms/{id}/draft-rules/", body, match)
        return shown

    def close_calendar(self, id: int, *, key: str = "") -> bodies.CalendarShown:
        """Close the address."""
        shown: bodies.CalendarShown = self.done(f"/calendars/{id}/close/", None, key)
        return shown

    def close_client(self, id: int, *, match: str = "") -> None:
        """Let somebody of a farm see it no more."""
        self.changed("DELETE", f"/clients/{id}/", None, match)

    def close_invoice_link(self, id: int, *, key: str = "") -> bodies.LinkShown:
        """Close a link to an invoice."""
        shown: bodies.LinkShown = self.done(f"/invoice-links/{id}/close/", None, key)
        return shown

    def close_order_line(self, id: int, *, key: str = "") -> bodies.SupplyLineShown:
        """Expect no more of a line."""
        shown: bodies.SupplyLineShown = self.done(f"/kit/order-lines/{id}/close/", None, key)
        return shown

    def close_vet_pass(self, id: int, *, key: str = "") -> bodies.VetPassShown:
        """Close a link of the vet."""
        shown: bodies.VetPassShown = self.done(f"/vet-passes/{id}/close/", None, key)
        return shown

    def compare_plans(self, id: int, other: int) -> bodies.ChangesShown:
        """Two plans of a week."""
        shown: bodies.ChangesShown = self.asked(f"/plans/{id}/against/{other}/", {})
        return shown

    def confirm_visit(self, id: int, *, key: str = "") -> bodies.VisitShown:
        """The farm said yes."""
        shown: bodies.VisitShown = self.done(f"/visits/{id}/confirm/", None, key)
        return shown

    def count_stock(self, body: bodies.StockCountWordRequest, *, key: str = "") -> bodies.CountTold:
        """Stock was counted."""
        shown: bodies.CountTold = self.done("/kit/counts/", body, key)
        return shown

    def discard_draft(self, id: int, *, match: str = "") -> None:
        """Throw a draft away."""
        self.changed("DELETE", f"/drafts/{id}/", None, match)

    def draft_anew(self, id: int, body: bodies.ReasonWordRequest, *, key: str = "") -> bodies.AnewTold:
        """Make a draft anew from the work."""
        shown: bodies.AnewTold = self.done(f"/drafts/{id}/anew/", body, key)
        return shown

    def draft_credit_note(
        self, id: int, body: bodies.CreditWordRequest, *, key: str = ""
    ) -> bodies.DraftShown:
        """Draft a credit note."""
        shown: bodies.DraftShown = self.done(f"/invoices/{id}/credit/", body, key)
        return shown

    def draft_late_work(
        self, id: int, body: bodies.ReasonWordRequest, *, key: str = ""
    ) -> bodies.InvoicesTold:
        """Draft what changed since the bill."""
        shown: bodies.InvoicesTold = self.done(f"/visits/{id}/late-work/", body, key)
        return shown

    def draft_month(self, id: int, body: bodies.MonthWordRequest, *, key: str = "") -> bodies.DraftedTold:
        """Draft a farm's month."""
        shown: bodies.DraftedTold = self.done(f"/farms/{id}/draft-month/", body, key)
        return shown

    def draft_ready(self, *, key: str = "") -> bodies.DraftedAllTold:
        """Draft all that is ready."""
        shown: bodies.DraftedAllTold = self.done("/drafts/draft-ready/", None, key)
        return shown

    def draft_visit(self, id: int, *, key: str = "") -> bodies.DraftedTold:
        """Draft a visit's invoice."""
        shown: bodies.DraftedTold = self.done(f"/visits/{id}/draft-invoice/", None, key)
        return shown

    def drop_draft_amount(
        self, id: int, body: bodies.ReasonWordRequest, *, key: str = ""
    ) -> bodies.DraftShown:
        """Take a discount or a charge off a draft."""
        shown: bodies.DraftShown = self.done(f"/draft-amounts/{id}/drop/", body, key)
        return shown

    def drop_plan(self, id: int, *, key: str = "") -> bodies.PlanShown:
        """Drop the plan."""
        shown: bodies.PlanShown = self.done(f"/plans/{id}/drop/", None, key)
        return shown

    def drop_price_list(self, id: int, *, match: str = "") -> None:
        """Drop a price list."""
        self.changed("DELETE", f"/price-lists/{id}/", None, match)

    def drop_reminder(self, id: int, body: bodies.BecauseWordRequest, *, key: str = "") -> bodies.ReminderRow:
        """Drop a reminder."""
        shown: bodies.ReminderRow = self.done(f"/reminders/{id}/drop/", body, key)
        return shown

    def drop_tax_rate(self, id: int, *, match: str = "") -> None:
        """Drop a tax rate."""
        self.changed("DELETE", f"/tax-rates/{id}/", None, match)

    def drop_watch_contact(self, id: int, *, match: str = "") -> None:
        """Take them off the list."""
        self.changed("DELETE", f"/watch-contacts/{id}/", None, match)

    def end_agreement(self, id: int, *, key: str = "") -> bodies.EndedTold:
        """End an agreement."""
        shown: bodies.EndedTold = self.done(f"/agreements/{id}/end/", None, key)
        return shown

    def end_van_out(self, id: int, *, key: str = "") -> bodies.VanShown:
        """A van works again."""
        shown: bodies.VanShown = self.done(f"/van-outs/{id}/end/", None, key)
        return shown

    def expect_cows(self, id: int, body: bodies.CountWordRequest, *, key: str = "") -> bodies.VisitShown:
        """Count with so many cows."""
        shown: bodies.VisitShown = self.done(f"/visits/{id}/expect-cows/", body, key)
        return shown

    def fetch_herd_year(self, id: int, year: int) -> bytes:
        """A herd's year, printed."""
        return self.file(f"/farms/{id}/herd-years/{year}/pdf/", {})

    def fetch_letter(self, id: int) -> bytes:
        """One letter, printed."""
        return self.file(f"/letters/{id}/pdf/", {})

    def fetch_outside_calendar(self, id: int, *, key: str = "") -> bodies.OutsideShown:
        """Read it again."""
        shown: bodies.OutsideShown = self.done(f"/outside-calendars/{id}/read/", None, key)
        return shown

    def fetch_photo(self, id: int, uid: str) -> bytes:
        """One photo."""
        return self.file(f"/visits/{id}/photos/{uid}/file/", {})

    def fetch_report(self, id: int) -> bytes:
        """One report, printed."""
        return self.file(f"/reports/{id}/pdf/", {})

    def finish_visit(self, id: int, body: bodies.SignOffWordRequest, *, key: str = "") -> bodies.VisitShown:
        """Finish it."""
        shown: bodies.VisitShown = self.done(f"/visits/{id}/finish/", body, key)
        return shown

    def give_client_rights(
        self, id: int, body: bodies.PatchedRightsWordRequest, *, match: str = ""
    ) -> bodies.ClientShown:
        """Say what somebody of a farm may do."""
        shown: bodies.ClientShown = self.changed("PATCH", f"/clients/{id}/", body, match)
        return shown

    def give_vet_pass(self, id: int, body: bodies.VetPassWordRequest, *, key: str = "") -> bodies.VetPassMade:
        """Give the vet a link."""
        shown: bodies.VetPassMade = self.done(f"/farms/{id}/vet-passes/", body, key)
        return shown

    def hand_in_herd_list(
        self, id: int, body: bodies.HerdListWordRequest, *, key: str = ""
    ) -> bodies.HerdListLookedAt:
        """Hand in a herd list, to look at."""
        shown: bodies.HerdListLookedAt = self.done(f"/farms/{id}/herd-lists/", body, key)
        return shown

    def hold_offer(self, id: int, body: bodies.HoldWordRequest, *, key: str = "") -> bodies.HeldShown:
        """Hold an hour."""
        shown: bodies.HeldShown = self.done(f"/farms/{id}/held-hours/", body, key)
        return shown

    def invite_client(self, id: int, body: bodies.ClientWordRequest, *, key: str = "") -> bodies.ClientShown:
        """Ask somebody of a farm in."""
        shown: bodies.ClientShown = self.done(f"/farms/{id}/clients/", body, key)
        return shown

    def issue_draft(self, id: int, body: bodies.SendWordRequest, *, key: str = "") -> bodies.InvoiceShown:
        """Issue a draft."""
        shown: bodies.InvoiceShown = self.done(f"/drafts/{id}/issue/", body, key)
        return shown

    def issue_letter(self, id: int, *, key: str = "") -> bodies.LetterShown:
        """Issue a letter to the vet."""
        shown: bodies.LetterShown = self.done(f"/trims/{id}/letters/issue/", None, key)
        return shown

    def issue_report(self, id: int, *, key: str = "") -> bodies.ReportShown:
        """Issue the report."""
        shown: bodies.ReportShown = self.done(f"/visits/{id}/reports/issue/", None, key)
        return shown

    def leave_unbilled(self, id: int, body: bodies.ReasonWordRequest, *, key: str = "") -> bodies.PiecesTold:
        """Leave a visit's work unbilled."""
        shown: bodies.PiecesTold = self.done(f"/visits/{id}/leave-unbilled/", body, key)
        return shown

    def leave_wish(self, id: int, body: bodies.WishWordRequest, *, key: str = "") -> bodies.VisitShown:
        """Leave a wish."""
        shown: bodies.VisitShown = self.done(f"/farms/{id}/wishes/", body, key)
        return shown

    def let_go_held_hour(self, id: int, *, key: str = "") -> bodies.HeldShown:
        """Let it go."""
        shown: bodies.HeldShown = self.done(f"/held-hours/{id}/let-go/", None, key)
        return shown

    def list_agreements(
        self,
        id: int,
        *,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.AgreementShown]:
        """What was agreed with a farm."""
        return self.pages(f"/farms/{id}/agreements/", {"limit": limit, "order": order})

    def list_bank_entries(
        self,
        *,
        booked_from: str | None = None,
        booked_until: str | None = None,
        show: Literal["to_match", "gone_out", "done"] | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.BankEntryShown]:
        """Bookings on the account."""
        return self.pages(
            "/bank-entries/",
            {
                "booked_from": booked_from,
                "booked_until": booked_until,
                "show": show,
                "limit": limit,
                "order": order,
            },
        )

    def list_bank_files(
        self,
        *,
        is_waiting: bool | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.BankFileShown]:
        """Files of the bank, the newest first."""
        return self.pages("/bank-files/", {"is_waiting": is_waiting, "limit": limit, "order": order})

    def list_bank_mappings(self, *, limit: int | None = None) -> Iterator[bodies.BankMappingShown]:
        """Kept columns of CSVs."""
        return self.pages("/bank-mappings/", {"limit": limit})

    def list_bank_proposals(
        self,
        *,
        booked_from: str | None = None,
        booked_until: str | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.MatchShown]:
        """What bookings may pay."""
        return self.pages(
            "/bank-proposals/",
            {"booked_from": booked_from, "booked_until": booked_until, "limit": limit, "order": order},
        )

    def list_blades(
        self,
        *,
        van: int | None = None,
        kind: bodies.BladeKind | None = None,
        state: bodies.BladeState | None = None,
        limit: int | None = None,
        order: Literal["name", "-name", "id", "-id"] | None = None,
    ) -> Iterator[bodies.BladeShown]:
        """The knives and discs."""
        return self.pages(
            "/kit/blades/", {"van": van, "kind": kind, "state": state, "limit": limit, "order": order}
        )

    def list_blocks(
        self,
        *,
        farm: int | None = None,
        cow: int | None = None,
        is_on: bool | None = None,
        off_by_day: str | None = None,
        limit: int | None = None,
        order: Literal["off_due", "-off_due", "id", "-id"] | None = None,
    ) -> Iterator[bodies.BlockShown]:
        """The blocks."""
        return self.pages(
            "/blocks/",
            {
                "farm": farm,
                "cow": cow,
                "is_on": is_on,
                "off_by_day": off_by_day,
                "limit": limit,
                "order": order,
            },
        )

    def list_busy_times(
        self, id: int, *, limit: int | None = None, order: Literal["starts", "-starts"] | None = None
    ) -> Iterator[bodies.BusyShown]:
        """When it keeps the van in."""
        return self.pages(f"/outside-calendars/{id}/busy/", {"limit": limit, "order": order})

    def list_calendars(
        self,
        *,
        is_open: bool | None = None,
        limit: int | None = None,
        order: Literal["name", "-name", "id", "-id"] | None = None,
    ) -> Iterator[bodies.CalendarShown]:
        """The calendar addresses."""
        return self.pages("/calendars/", {"is_open": is_open, "limit": limit, "order": order})

    def list_changes(
        self,
        *,
        kind: bodies.EntryKind | None = None,
        by: int | None = None,
        since: str | None = None,
        until: str | None = None,
        what: Literal["cow", "farm", "invoice", "member", "payment", "price_list", "van", "visit"]
        | None = None,
        id: int | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest"] | None = None,
    ) -> Iterator[bodies.ChangeShown]:
        """Who changed what."""
        return self.pages(
            "/changes/",
            {
                "kind": kind,
                "by": by,
                "since": since,
                "until": until,
                "what": what,
                "id": id,
                "limit": limit,
                "order": order,
            },
        )

    def list_clients(self, id: int, *, limit: int | None = None) -> Iterator[bodies.ClientShown]:
        """Who of a farm sees it."""
        return self.pages(f"/farms/{id}/clients/", {"limit": limit})

    def list_consumables(
        self,
        *,
        is_active: bool | None = None,
        kind: bodies.ConsumableKind | None = None,
        name: str | None = None,
        supplier: str | None = None,
        limit: int | None = None,
        order: Literal["name", "-name", "id", "-id"] | None = None,
    ) -> Iterator[bodies.ConsumableShown]:
        """The consumables."""
        return self.pages(
            "/kit/consumables/",
            {
                "is_active": is_active,
                "kind": kind,
                "name": name,
                "supplier": supplier,
                "limit": limit,
                "order": order,
            },
        )

    def list_contacts(
        self,
        id: int,
        *,
        gets_reports: bool | None = None,
        name: str | None = None,
        limit: int | None = None,
        order: Literal["name", "-name", "id", "-id"] | None = None,
    ) -> Iterator[bodies.ContactShown]:
        """The people of a farm."""
        return self.pages(
            f"/farms/{id}/contacts/",
            {"gets_reports": gets_reports, "name": name, "limit": limit, "order": order},
        )

    def list_cow_trims(
        self,
        id: int,
        *,
        limit: int | None = None,
        order: Literal["recorded_at", "-recorded_at", "id", "-id"] | None = None,
    ) -> Iterator[bodies.TrimShown]:
        """A cow's trims."""
        return self.pages(f"/cows/{id}/trims/", {"limit": limit, "order": order})

    def list_cow_versions(self, id: int) -> bodies.CowVersionsShown:
        """The versions of a cow's words."""
        shown: bodies.CowVersionsShown = self.asked(f"/cows/{id}/versions/", {})
        return shown

    def list_cows(
        self,
        *,
        farm: int | None = None,
        number: str | None = None,
        status: bodies.CowStatus | None = None,
        is_on_farm: bool | None = None,
        official_tag: str | None = None,
        electronic_id: str | None = None,
        known_as: str | None = None,
        limit: int | None = None,
        order: Literal["number", "-number", "id", "-id"] | None = None,
    ) -> Iterator[bodies.CowShown]:
        """Cows of all farms."""
        return self.pages(
            "/cows/",
            {
                "farm": farm,
                "number": number,
                "status": status,
                "is_on_farm": is_on_farm,
                "official_tag": official_tag,
                "electronic_id": electronic_id,
                "known_as": known_as,
                "limit": limit,
                "order": order,
            },
        )

    def list_draft_rule_sets(self) -> bodies.RuleSetsShown:
        """The sets of draft rules."""
        shown: bodies.RuleSetsShown = self.asked("/draft-rule-sets/", {})
        return shown

    def list_drafts(
        self,
        *,
        farm: int | None = None,
        is_ready: bool | None = None,
        limit: int | None = None,
        order: Literal["tax_point", "-tax_point", "id", "-id"] | None = None,
    ) -> Iterator[bodies.InvoiceRow]:
        """The drafts."""
        return self.pages("/drafts/", {"farm": farm, "is_ready": is_ready, "limit": limit, "order": order})

    def list_erasures(
        self,
        id: int,
        *,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.ErasureShown]:
        """A farm's wishes to be erased."""
        return self.pages(f"/farms/{id}/erasures/", {"limit": limit, "order": order})

    def list_farm_cows(
        self,
        id: int,
        *,
        number: str | None = None,
        status: bodies.CowStatus | None = None,
        is_on_farm: bool | None = None,
        official_tag: str | None = None,
        electronic_id: str | None = None,
        known_as: str | None = None,
        limit: int | None = None,
        order: Literal["number", "-number", "id", "-id"] | None = None,
    ) -> Iterator[bodies.CowShown]:
        """The cows of a farm."""
        return self.pages(
            f"/farms/{id}/cows/",
            {
                "number": number,
                "status": status,
                "is_on_farm": is_on_farm,
                "official_tag": official_tag,
                "electronic_id": electronic_id,
                "known_as": known_as,
                "limit": limit,
                "order": order,
            },
        )

    def list_farms(
        self,
        *,
        is_active: bool | None = None,
        name: str | None = None,
        payer: int | None = None,
        hygiene_level: int | None = None,
        herd_size_from: int | None = None,
        limit: int | None = None,
        order: Literal["name", "-name", "id", "-id", "herd_size", "-herd_size"] | None = None,
    ) -> Iterator[bodies.FarmShown]:
        """The farms."""
        return self.pages(
            "/farms/",
            {
                "is_active": is_active,
                "name": name,
                "payer": payer,
                "hygiene_level": hygiene_level,
                "herd_size_from": herd_size_from,
                "limit": limit,
                "order": order,
            },
        )

    def list_held_hours(
        self,
        *,
        farm: int | None = None,
        state: bodies.HeldState | None = None,
        in_force: bool | None = None,
        limit: int | None = None,
        order: Literal["start", "-start", "id", "-id"] | None = None,
    ) -> Iterator[bodies.HeldShown]:
        """The hours held."""
        return self.pages(
            "/held-hours/",
            {"farm": farm, "state": state, "in_force": in_force, "limit": limit, "order": order},
        )

    def list_herd_lists(
        self,
        id: int,
        *,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.HerdListShown]:
        """The herd lists of a farm."""
        return self.pages(f"/farms/{id}/herd-lists/", {"limit": limit, "order": order})

    def list_invoice_links(self, id: int, *, limit: int | None = None) -> Iterator[bodies.LinkShown]:
        """Links to an invoice."""
        return self.pages(f"/invoices/{id}/links/", {"limit": limit})

    def list_invoices(
        self,
        *,
        state: bodies.InvoiceState | None = None,
        kind: bodies.InvoiceKind | None = None,
        farm: int | None = None,
        payer: int | None = None,
        visit: int | None = None,
        corrects: int | None = None,
        number: str | None = None,
        issued_from: str | None = None,
        issued_until: str | None = None,
        is_open: bool | None = None,
        is_overdue: bool | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.InvoiceRow]:
        """The invoices, the newest first."""
        return self.pages(
            "/invoices/",
            {
                "state": state,
                "kind": kind,
                "farm": farm,
                "payer": payer,
                "visit": visit,
                "corrects": corrects,
                "number": number,
                "issued_from": issued_from,
                "issued_until": issued_until,
                "is_open": is_open,
                "is_overdue": is_overdue,
                "limit": limit,
                "order": order,
            },
        )

    def list_journeys(
        self,
        *,
        on_from: str | None = None,
        on_until: str | None = None,
        van: int | None = None,
        is_by_hand: bool | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.JourneyShown]:
        """The mileage log."""
        return self.pages(
            "/journeys/",
            {
                "on_from": on_from,
                "on_until": on_until,
                "van": van,
                "is_by_hand": is_by_hand,
                "limit": limit,
                "order": order,
            },
        )

    def list_ledger(
        self,
        id: int,
        *,
        kind: bodies.MovementKind | None = None,
        place: int | None = None,
        visit: int | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "at", "-at"] | None = None,
    ) -> Iterator[bodies.MovementShown]:
        """The ledger of a consumable."""
        return self.pages(
            f"/kit/consumables/{id}/ledger/",
            {"kind": kind, "place": place, "visit": visit, "limit": limit, "order": order},
        )

    def list_letters(self, id: int, *, limit: int | None = None) -> Iterator[bodies.LetterShown]:
        """The letters to the vet of a visit."""
        return self.pages(f"/visits/{id}/letters/", {"limit": limit})

    def list_message_texts(self) -> bodies.MessageTextsShown:
        """The texts of messages."""
        shown: bodies.MessageTextsShown = self.asked("/message-texts/", {})
        return shown

    def list_mileage_rates(
        self, *, limit: int | None = None, order: Literal["newest", "-newest", "id", "-id"] | None = None
    ) -> Iterator[bodies.MileageRateShown]:
        """The mileage allowances."""
        return self.pages("/mileage-rates/", {"limit": limit, "order": order})

    def list_money_mails(
        self,
        *,
        paper: bodies.SentPaper | None = None,
        farm: int | None = None,
        invoice: int | None = None,
        state: bodies.OutgoingState | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.MailShown]:
        """Mails with papers of the money."""
        return self.pages(
            "/money-mails/",
            {
                "paper": paper,
                "farm": farm,
                "invoice": invoice,
                "state": state,
                "limit": limit,
                "order": order,
            },
        )

    def list_offers(
        self,
        id: int,
        *,
        reason: bodies.VisitReason | None = None,
        head_count: int | None = None,
        corrective_count: int | None = None,
        mobility_scale: bodies.MobilityScale | None = None,
        mobility_score: int | None = None,
        due_from: str | None = None,
        due_until: str | None = None,
    ) -> bodies.OffersShown:
        """When can you come."""
        shown: bodies.OffersShown = self.asked(
            f"/farms/{id}/offers/",
            {
                "reason": reason,
                "head_count": head_count,
                "corrective_count": corrective_count,
                "mobility_scale": mobility_scale,
                "mobility_score": mobility_score,
                "due_from": due_from,
                "due_until": due_until,
            },
        )
        return shown

    def list_orders(
        self,
        *,
        supplier: str | None = None,
        is_open: bool | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.SupplyOrderShown]:
        """The orders."""
        return self.pages(
            "/kit/orders/", {"supplier": supplier, "is_open": is_open, "limit": limit, "order": order}
        )

    def list_outside_calendars(self, id: int, *, limit: int | None = None) -> Iterator[bodies.OutsideShown]:
        """A van's calendars."""
        return self.pages(f"/vans/{id}/outside-calendars/", {"limit": limit})

    def list_payers(
        self,
        *,
        name: str | None = None,
        limit: int | None = None,
        order: Literal["name", "-name", "id", "-id"] | None = None,
    ) -> Iterator[bodies.PayerShown]:
        """The payers."""
        return self.pages("/payers/", {"name": name, "limit": limit, "order": order})

    def list_payments(
        self,
        *,
        farm: int | None = None,
        method: bodies.PaymentMethod | None = None,
        received_from: str | None = None,
        received_until: str | None = None,
        reference: str | None = None,
        is_taken_back: bool | None = None,
        has_rest: bool | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.PaymentRow]:
        """The payments."""
        return self.pages(
            "/payments/",
            {
                "farm": farm,
                "method": method,
                "received_from": received_from,
                "received_until": received_until,
                "reference": reference,
                "is_taken_back": is_taken_back,
                "has_rest": has_rest,
                "limit": limit,
                "order": order,
            },
        )

    def list_photos(self, id: int, *, limit: int | None = None) -> Iterator[bodies.PhotoShown]:
        """The photos of a visit."""
        return self.pages(f"/visits/{id}/photos/", {"limit": limit})

    def list_plans(
        self,
        *,
        monday: str | None = None,
        state: bodies.WeekPlanState | None = None,
        limit: int | None = None,
        order: Literal["asked_at", "-asked_at", "monday", "-monday"] | None = None,
    ) -> Iterator[bodies.PlanShown]:
        """The week plans."""
        return self.pages("/plans/", {"monday": monday, "state": state, "limit": limit, "order": order})

    def list_price_lists(
        self,
        *,
        held_on: str | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.PriceListShown]:
        """The price lists."""
        return self.pages("/price-lists/", {"held_on": held_on, "limit": limit, "order": order})

    def list_rechecks(
        self,
        *,
        farm: int | None = None,
        cow: int | None = None,
        visit: int | None = None,
        foot: bodies.Foot | None = None,
        is_open: bool | None = None,
        due_by: str | None = None,
        late_on: str | None = None,
        limit: int | None = None,
        order: Literal["due_until", "-due_until", "id", "-id"] | None = None,
    ) -> Iterator[bodies.RecheckShown]:
        """The re-checks."""
        return self.pages(
            "/rechecks/",
            {
                "farm": farm,
                "cow": cow,
                "visit": visit,
                "foot": foot,
                "is_open": is_open,
                "due_by": due_by,
                "late_on": late_on,
                "limit": limit,
                "order": order,
            },
        )

    def list_reference_rates(
        self, *, limit: int | None = None, order: Literal["newest", "-newest", "id", "-id"] | None = None
    ) -> Iterator[bodies.ReferenceRateShown]:
        """The reference rates."""
        return self.pages("/reference-rates/", {"limit": limit, "order": order})

    def list_reminders(
        self,
        *,
        state: bodies.ReminderState | None = None,
        invoice: int | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.ReminderRow]:
        """The reminders."""
        return self.pages("/reminders/", {"state": state, "invoice": invoice, "limit": limit, "order": order})

    def list_reports(self, id: int, *, limit: int | None = None) -> Iterator[bodies.ReportShown]:
        """The reports of a visit."""
        return self.pages(f"/visits/{id}/reports/", {"limit": limit})

    def list_scorings(
        self, id: int, *, limit: int | None = None, order: Literal["scored_on", "-scored_on"] | None = None
    ) -> Iterator[bodies.RoundShown]:
        """A farm's rounds of mobility scores."""
        return self.pages(f"/farms/{id}/scorings/", {"limit": limit, "order": order})

    def list_sharpenings(
        self,
        *,
        blade: int | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "at", "-at"] | None = None,
    ) -> Iterator[bodies.SharpeningShown]:
        """Sharpenings."""
        return self.pages("/kit/sharpenings/", {"blade": blade, "limit": limit, "order": order})

    def list_stock_places(self, *, limit: int | None = None) -> Iterator[bodies.StockPlaceShown]:
        """Where stock lies."""
        return self.pages("/kit/places/", {"limit": limit})

    def list_stop_places(self, id: int, visit_pk: int) -> bodies.PlacesShown:
        """The places of a stop."""
        shown: bodies.PlacesShown = self.asked(f"/plans/{id}/stops/{visit_pk}/places/", {})
        return shown

    def list_tax_rates(
        self,
        *,
        code: str | None = None,
        limit: int | None = None,
        order: Literal["code", "-code", "newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.TaxRateShown]:
        """The tax rates."""
        return self.pages("/tax-rates/", {"code": code, "limit": limit, "order": order})

    def list_vans(
        self,
        *,
        is_active: bool | None = None,
        limit: int | None = None,
        order: Literal["name", "-name", "id", "-id"] | None = None,
    ) -> Iterator[bodies.VanShown]:
        """The vans."""
        return self.pages("/vans/", {"is_active": is_active, "limit": limit, "order": order})

    def list_vet_passes(
        self,
        id: int,
        *,
        limit: int | None = None,
        order: Literal["newest", "-newest", "id", "-id"] | None = None,
    ) -> Iterator[bodies.VetPassShown]:
        """A farm's links for its vet."""
        return self.pages(f"/farms/{id}/vet-passes/", {"limit": limit, "order": order})

    def list_visit_messages(
        self, id: int, *, limit: int | None = None, order: Literal["made_at", "-made_at"] | None = None
    ) -> Iterator[bodies.ToldShown]:
        """What the farm was told."""
        return self.pages(f"/visits/{id}/messages/", {"limit": limit, "order": order})

    def list_visit_trims(
        self,
        id: int,
        *,
        limit: int | None = None,
        order: Literal["recorded_at", "-recorded_at", "id", "-id"] | None = None,
    ) -> Iterator[bodies.TrimShown]:
        """The cows done on a visit."""
        return self.pages(f"/visits/{id}/trims/", {"limit": limit, "order": order})

    def list_visit_uses(self, id: int) -> bodies.VisitUsesShown:
        """What a visit used up."""
        shown: bodies.VisitUsesShown = self.asked(f"/visits/{id}/uses/", {})
        return shown

    def list_visits(
        self,
        *,
        state: bodies.VisitState | None = None,
        reason: bodies.VisitReason | None = None,
        farm: int | None = None,
        van: int | None = None,
        due_by: str | None = None,
        from_day: str | None = None,
        until_day: str | None = None,
        limit: int | None = None,
        order: Literal[
            "id",
            "-id",
            "asked_at",
            "-asked_at",
            "due_until",
            "-due_until",
            "due_from",
            "-due_from",
            "changed_at",
            "-changed_at",
        ]
        | None = None,
    ) -> Iterator[bodies.VisitShown]:
        """The visits."""
        return self.pages(
            "/visits/",
            {
                "state": state,
                "reason": reason,
                "farm": farm,
                "van": van,
                "due_by": due_by,
                "from_day": from_day,
                "until_day": until_day,
                "limit": limit,
                "order": order,
            },
        )

    def list_wash_downs(
        self,
        *,
        van: int | None = None,
        visit: int | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "washed_at", "-washed_at"] | None = None,
    ) -> Iterator[bodies.WashDownShown]:
        """The wash-downs."""
        return self.pages("/kit/wash-downs/", {"van": van, "visit": visit, "limit": limit, "order": order})

    def list_watch_contacts(
        self, *, limit: int | None = None, order: Literal["turn", "-turn"] | None = None
    ) -> Iterator[bodies.WatchContactShown]:
        """Who is told."""
        return self.pages("/watch-contacts/", {"limit": limit, "order": order})

    def list_watches(
        self,
        *,
        is_open: bool | None = None,
        visit: int | None = None,
        is_test: bool | None = None,
        limit: int | None = None,
        order: Literal["began_at", "-began_at", "id", "-id"] | None = None,
    ) -> Iterator[bodies.WatchShown]:
        """The watches."""
        return self.pages(
            "/watches/",
            {"is_open": is_open, "visit": visit, "is_test": is_test, "limit": limit, "order": order},
        )

    def list_weather(
        self,
        *,
        from_: str | None = None,
        to: str | None = None,
        limit: int | None = None,
        order: Literal["newest", "-newest", "day", "-day"] | None = None,
    ) -> Iterator[bodies.WeatherShown]:
        """Forecasts that were typed."""
        return self.pages("/kit/weather/", {"from": from_, "to": to, "limit": limit, "order": order})

    def list_week_plans(
        self, week: str, *, limit: int | None = None, order: Literal["asked_at", "-asked_at"] | None = None
    ) -> Iterator[bodies.PlanShown]:
        """The plans of a week."""
        return self.pages(f"/weeks/{week}/plans/", {"limit": limit, "order": order})

    def load_van(self, id: int, body: bodies.LoadTakenRequest, *, key: str = "") -> bodies.MovementsTold:
        """A van was loaded."""
        shown: bodies.MovementsTold = self.done(f"/vans/{id}/load/", body, key)
        return shown

    def lock_period(self, body: bodies.LockWordRequest, *, key: str = "") -> bodies.LockTold:
        """Close the books, or open them."""
        shown: bodies.LockTold = self.done("/period-lock/", body, key)
        return shown

    def lock_stop(
        self, id: int, visit_pk: int, body: bodies.LockStopWordRequest, *, key: str = ""
    ) -> bodies.LockShown:
        """Lock a stop."""
        shown: bodies.LockShown = self.done(f"/plans/{id}/stops/{visit_pk}/lock/", body, key)
        return shown

    def look_at_kit_list(self, body: bodies.KitListWordRequest, *, key: str = "") -> bodies.KitListTold:
        """Look at a list of consumables."""
        shown: bodies.KitListTold = self.done("/kit/lists/look/", body, key)
        return shown

    def look_at_message(
        self, body: bodies.MessageTextWordRequest, *, key: str = ""
    ) -> bodies.MessageLookShown:
        """Look at a text before it is written."""
        shown: bodies.MessageLookShown = self.done("/message-texts/look/", body, key)
        return shown

    def make_calendar(self, body: bodies.CalendarWordRequest, *, key: str = "") -> bodies.CalendarMadeShown:
        """Make a calendar address."""
        shown: bodies.CalendarMadeShown = self.done("/calendars/", body, key)
        return shown

    def make_invoice_link(self, id: int, *, key: str = "") -> bodies.NewLinkShown:
        """Make a link to an invoice."""
        shown: bodies.NewLinkShown = self.done(f"/invoices/{id}/links/", None, key)
        return shown

    def match_bank_entry(
        self, id: int, body: bodies.MatchWordRequest, *, key: str = ""
    ) -> bodies.PaymentShown:
        """Match a booking."""
        shown: bodies.PaymentShown = self.done(f"/bank-entries/{id}/match/", body, key)
        return shown

    def match_bank_entry_paid_back(
        self, id: int, body: bodies.PaidBackOfRequest, *, key: str = ""
    ) -> bodies.PaymentShown:
        """Match a booking as paid back."""
        shown: bodies.PaymentShown = self.done(f"/bank-entries/{id}/paid-back/", body, key)
        return shown

    def mend_journey(
        self, id: int, body: bodies.PatchedMendWordRequest, *, match: str = ""
    ) -> bodies.JourneyShown:
        """Mend a drive."""
        shown: bodies.JourneyShown = self.changed("PATCH", f"/journeys/{id}/", body, match)
        return shown

    def move_stock(self, body: bodies.StockMoveWordRequest, *, key: str = "") -> bodies.MovementsTold:
        """Stock was moved."""
        shown: bodies.MovementsTold = self.done("/kit/moves/", body, key)
        return shown

    def move_stop(
        self, id: int, visit_pk: int, body: bodies.MoveWordRequest, *, key: str = ""
    ) -> bodies.PlanShown:
        """Move a stop."""
        shown: bodies.PlanShown = self.done(f"/plans/{id}/stops/{visit_pk}/move/", body, key)
        return shown

    def note_calving(self, id: int, body: bodies.CalvingWordRequest, *, key: str = "") -> bodies.CowShown:
        """A cow has calved."""
        shown: bodies.CowShown = self.done(f"/cows/{id}/calvings/", body, key)
        return shown

    def note_heard(self, id: int, body: bodies.HeardWordRequest) -> bodies.HeardShown:
        """Say that the phone is heard."""
        shown: bodies.HeardShown = self.sent("POST", f"/visits/{id}/heard/", {}, body)
        return shown

    def note_journey(self, body: bodies.DriveWordRequest, *, key: str = "") -> bodies.JourneyShown:
        """Note a drive."""
        shown: bodies.JourneyShown = self.done("/journeys/", body, key)
        return shown

    def note_payment(self, body: bodies.PaymentWordRequest, *, key: str = "") -> bodies.PaymentShown:
        """Note a payment."""
        shown: bodies.PaymentShown = self.done("/payments/", body, key)
        return shown

    def note_scores(self, id: int, body: bodies.RoundWordRequest, *, key: str = "") -> bodies.WholeRoundShown:
        """Note a round of scores."""
        shown: bodies.WholeRoundShown = self.done(f"/farms/{id}/scorings/", body, key)
        return shown

    def note_van_out(self, id: int, body: bodies.VanOutWordRequest, *, key: str = "") -> bodies.VanShown:
        """A van is out of action."""
        shown: bodies.VanShown = self.done(f"/vans/{id}/outs/", body, key)
        return shown

    def pay_back_credit_note(
        self, id: int, body: bodies.PaidBackWordRequest, *, key: str = ""
    ) -> bodies.PaymentShown:
        """Pay a credit note back."""
        shown: bodies.PaymentShown = self.done(f"/invoices/{id}/pay-back/", body, key)
        return shown

    def pay_back_payment(
        self, id: int, body: bodies.PaidBackWordRequest, *, key: str = ""
    ) -> bodies.PaymentShown:
        """Pay the rest of a payment back."""
        shown: bodies.PaymentShown = self.done(f"/payments/{id}/pay-back/", body, key)
        return shown

    def place_order(self, body: bodies.SupplyOrderWordRequest, *, key: str = "") -> bodies.SupplyOrderShown:
        """Note an order."""
        shown: bodies.SupplyOrderShown = self.done("/kit/orders/", body, key)
        return shown

    def plan_visit(self, id: int, body: bodies.HourWordRequest, *, key: str = "") -> bodies.VisitShown:
        """Give it van and hour."""
        shown: bodies.VisitShown = self.done(f"/visits/{id}/plan/", body, key)
        return shown

    def print_day_sheet(self, id: int, shift: str) -> bytes:
        """A day sheet, printed."""
        return self.file(f"/plans/{id}/sheets/{shift}/pdf/", {})

    def print_draft_list(self, id: int) -> bytes:
        """The draft list, printed."""
        return self.file(f"/visits/{id}/draft/pdf/", {})

    def propose_reminders(self, *, key: str = "") -> bodies.ProposedTold:
        """Put reminders forward."""
        shown: bodies.ProposedTold = self.done("/reminders/propose/", None, key)
        return shown

    def prove_plan(self, id: int, *, key: str = "") -> bodies.PlanShown:
        """Prove how good it is."""
        shown: bodies.PlanShown = self.done(f"/plans/{id}/prove/", None, key)
        return shown

    def put_off_visit(self, id: int, body: bodies.WhyOffWordRequest, *, key: str = "") -> bodies.VisitShown:
        """Put it off."""
        shown: bodies.VisitShown = self.done(f"/visits/{id}/put-off/", body, key)
        return shown

    def put_use_right(self, id: int, body: bodies.UseWordRequest, *, key: str = "") -> bodies.VisitUsesShown:
        """Put right what a visit used."""
        shown: bodies.VisitUsesShown = self.done(f"/visits/{id}/uses/", body, key)
        return shown

    def read_agreement(self, id: int) -> bodies.AgreementShown:
        """One agreement."""
        shown: bodies.AgreementShown = self.asked(f"/agreements/{id}/", {})
        return shown

    def read_bank_columns(self, id: int) -> bodies.ColumnsTold:
        """The columns of a CSV."""
        shown: bodies.ColumnsTold = self.asked(f"/bank-files/{id}/columns/", {})
        return shown

    def read_bank_csv(self, id: int, body: bodies.ReadWordRequest, *, key: str = "") -> bodies.ReadingTold:
        """Read a CSV of the bank."""
        shown: bodies.ReadingTold = self.done(f"/bank-files/{id}/read/", body, key)
        return shown

    def read_bank_entry(self, id: int) -> bodies.BankEntryShown:
        """One booking."""
        shown: bodies.BankEntryShown = self.asked(f"/bank-entries/{id}/", {})
        return shown

    def read_bank_file(self, id: int) -> bodies.BankFileShown:
        """One file of the bank."""
        shown: bodies.BankFileShown = self.asked(f"/bank-files/{id}/", {})
        return shown

    def read_bevel(self, *, thickness: float | None = None, angle: float | None = None) -> bodies.BevelTold:
        """How wide a bevel is."""
        shown: bodies.BevelTold = self.asked("/kit/bevel/", {"thickness": thickness, "angle": angle})
        return shown

    def read_blade(self, id: int) -> bodies.BladeShown:
        """One knife or disc."""
        shown: bodies.BladeShown = self.asked(f"/kit/blades/{id}/", {})
        return shown

    def read_book(
        self,
        part: str,
        *,
        kind: bodies.PeriodKind | None = None,
        first: str | None = None,
        last: str | None = None,
        by: bodies.BookDay | None = None,
        from_row: int | None = None,
        rows: int | None = None,
    ) -> bodies.BookTold:
        """One list of the books."""
        shown: bodies.BookTold = self.asked(
            f"/books/{part}/",
            {"kind": kind, "first": first, "last": last, "by": by, "from_row": from_row, "rows": rows},
        )
        return shown

    def read_book_csv(
        self,
        part: str,
        *,
        kind: bodies.PeriodKind | None = None,
        first: str | None = None,
        last: str | None = None,
        by: bodies.BookDay | None = None,
    ) -> bytes:
        """A list as CSV."""
        return self.file(f"/books/{part}.csv", {"kind": kind, "first": first, "last": last, "by": by})

    def read_book_xlsx(
        self,
        part: str,
        *,
        kind: bodies.PeriodKind | None = None,
        first: str | None = None,
        last: str | None = None,
        by: bodies.BookDay | None = None,
    ) -> bytes:
        """A list as a spreadsheet."""
        return self.file(f"/books/{part}.xlsx", {"kind": kind, "first": first, "last": last, "by": by})

    def read_books(
        self,
        *,
        kind: bodies.PeriodKind | None = None,
        first: str | None = None,
        last: str | None = None,
        by: bodies.BookDay | None = None,
    ) -> bodies.BooksTold:
        """The books."""
        shown: bodies.BooksTold = self.asked(
            "/books/", {"kind": kind, "first": first, "last": last, "by": by}
        )
        return shown

    def read_books_xlsx(
        self,
        *,
        kind: bodies.PeriodKind | None = None,
        first: str | None = None,
        last: str | None = None,
        by: bodies.BookDay | None = None,
    ) -> bytes:
        """All lists as a spreadsheet."""
        return self.file("/books/all.xlsx", {"kind": kind, "first": first, "last": last, "by": by})

    def read_calendar(self, id: int) -> bodies.CalendarShown:
        """One calendar address."""
        shown: bodies.CalendarShown = self.asked(f"/calendars/{id}/", {})
        return shown

    def read_client(self, id: int) -> bodies.ClientShown:
        """Somebody of a farm who sees it."""
        shown: bodies.ClientShown = self.asked(f"/clients/{id}/", {})
        return shown

    def read_consumable(self, id: int) -> bodies.ConsumableShown:
        """One consumable."""
        shown: bodies.ConsumableShown = self.asked(f"/kit/consumables/{id}/", {})
        return shown

    def read_contact(self, id: int) -> bodies.ContactShown:
        """One person of a farm."""
        shown: bodies.ContactShown = self.asked(f"/contacts/{id}/", {})
        return shown

    def read_cow(self, id: int) -> bodies.CowShown:
        """One cow."""
        shown: bodies.CowShown = self.asked(f"/cows/{id}/", {})
        return shown

    def read_credit_left(self, id: int) -> bodies.CreditLeftTold:
        """What can still be credited."""
        shown: bodies.CreditLeftTold = self.asked(f"/invoices/{id}/credit-left/", {})
        return shown

    def read_crush_papers(self, id: int) -> bodies.CrushPapersShown:
        """The papers for the crush."""
        shown: bodies.CrushPapersShown = self.asked(f"/visits/{id}/crush/papers/", {})
        return shown

    def read_draft(self, id: int) -> bodies.DraftShown:
        """One draft."""
        shown: bodies.DraftShown = self.asked(f"/drafts/{id}/", {})
        return shown

    def read_draft_line(self, id: int) -> bodies.LineShown:
        """One line of a draft."""
        shown: bodies.LineShown = self.asked(f"/draft-lines/{id}/", {})
        return shown

    def read_draft_list(self, id: int) -> bodies.DraftListShown:
        """The draft list."""
        shown: bodies.DraftListShown = self.asked(f"/visits/{id}/draft/", {})
        return shown

    def read_draft_rules(self, id: int) -> bodies.FarmRulesShown:
        """A farm's draft rules."""
        shown: bodies.FarmRulesShown = self.asked(f"/farms/{id}/draft-rules/", {})
        return shown

    def read_edges(self) -> bodies.EdgesTold:
        """How long edges will last."""
        shown: bodies.EdgesTold = self.asked("/kit/edges/", {})
        return shown

    def read_farm(self, id: int) -> bodies.FarmShown:
        """One farm."""
        shown: bodies.FarmShown = self.asked(f"/farms/{id}/", {})
        return shown

    def read_farm_account(
        self, id: int, *, first: str | None = None, last: str | None = None, currency: str | None = None
    ) -> bodies.AccountTold:
        """A farm's account."""
        shown: bodies.AccountTold = self.asked(
            f"/farms/{id}/account/", {"first": first, "last": last, "currency": currency}
        )
        return shown

    def read_farm_ade(self, id: int, *, common: bool | None = None) -> bytes:
        """A farm's data for other programs."""
        return self.file(f"/farms/{id}/data/ade/", {"common": common})

    def read_farm_csv(self, id: int) -> bytes:
        """A farm's data as CSV."""
        return self.file(f"/farms/{id}/data/csv/", {})

    def read_farm_statement(self, id: int, *, first: str | None = None, last: str | None = None) -> bytes:
        """A farm's statement as PDF."""
        return self.file(f"/farms/{id}/statement.pdf", {"first": first, "last": last})

    def read_farm_terms(self, id: int) -> bodies.TermsShown:
        """How a farm is billed."""
        shown: bodies.TermsShown = self.asked(f"/farms/{id}/terms/", {})
        return shown

    def read_farm_xlsx(self, id: int) -> bytes:
        """A farm's data as XLSX."""
        return self.file(f"/farms/{id}/data/xlsx/", {})

    def read_figures(self) -> bodies.FiguresTold:
        """The business's own figures."""
        shown: bodies.FiguresTold = self.asked("/figures/", {})
        return shown

    def read_held_hour(self, id: int) -> bodies.HeldShown:
        """One hour held."""
        shown: bodies.HeldShown = self.asked(f"/held-hours/{id}/", {})
        return shown

    def read_herd_figures(self, id: int) -> bodies.HerdShown:
        """A herd's feet."""
        shown: bodies.HerdShown = self.asked(f"/farms/{id}/herd-figures/", {})
        return shown

    def read_herd_list(self, id: int) -> bodies.HerdListLookedAt:
        """One herd list, looked at."""
        shown: bodies.HerdListLookedAt = self.asked(f"/herd-lists/{id}/", {})
        return shown

    def read_in_kit_list(self, body: bodies.KitListWordRequest, *, key: str = "") -> bodies.KitListTold:
        """Read a list of consumables in."""
        shown: bodies.KitListTold = self.done("/kit/lists/", body, key)
        return shown

    def read_invoice(self, id: int) -> bodies.InvoiceShown:
        """One invoice."""
        shown: bodies.InvoiceShown = self.asked(f"/invoices/{id}/", {})
        return shown

    def read_invoice_cii(self, id: int) -> bytes:
        """The e-invoice as CII."""
        return self.file(f"/invoices/{id}/cii.xml", {})

    def read_invoice_mail(self, id: int) -> bodies.MailDraft:
        """The mail before it goes."""
        shown: bodies.MailDraft = self.asked(f"/invoices/{id}/send/", {})
        return shown

    def read_invoice_pdf(self, id: int) -> bytes:
        """The paper as PDF."""
        return self.file(f"/invoices/{id}/invoice.pdf", {})

    def read_invoice_ubl(self, id: int) -> bytes:
        """The e-invoice as UBL."""
        return self.file(f"/invoices/{id}/ubl.xml", {})

    def read_journey(self, id: int) -> bodies.JourneyShown:
        """One drive."""
        shown: bodies.JourneyShown = self.asked(f"/journeys/{id}/", {})
        return shown

    def read_kit_file(self, what: str) -> bytes:
        """A table of the kit as CSV."""
        return self.file(f"/kit/files/{what}/", {})

    def read_late_work(self, id: int) -> bodies.LateWorkTold:
        """What changed since the bill."""
        shown: bodies.LateWorkTold = self.asked(f"/visits/{id}/late-work/", {})
        return shown

    def read_letter(self, id: int) -> bodies.WholeLetterShown:
        """One letter to the vet."""
        shown: bodies.WholeLetterShown = self.asked(f"/letters/{id}/", {})
        return shown

    def read_logo(self) -> bodies.LogoWord:
        """The logo."""
        shown: bodies.LogoWord = self.asked("/money-rules/logo/", {})
        return shown

    def read_lots(self, id: int) -> bodies.LotsTold:
        """The lots of a consumable."""
        shown: bodies.LotsTold = self.asked(f"/kit/consumables/{id}/lots/", {})
        return shown

    def read_message_rules(self) -> bodies.MessageHoursShown:
        """When farms are told."""
        shown: bodies.MessageHoursShown = self.asked("/message-rules/", {})
        return shown

    def read_mileage_rate(self, id: int) -> bodies.MileageRateShown:
        """One allowance."""
        shown: bodies.MileageRateShown = self.asked(f"/mileage-rates/{id}/", {})
        return shown

    def read_milkings(self, id: int) -> bodies.MilkingsShown:
        """When a farm milks."""
        shown: bodies.MilkingsShown = self.asked(f"/farms/{id}/milkings/", {})
        return shown

    def read_money_mail(self, id: int) -> bodies.MailShown:
        """One mail."""
        shown: bodies.MailShown = self.asked(f"/money-mails/{id}/", {})
        return shown

    def read_money_rules(self) -> bodies.RulesShown:
        """How the money is kept."""
        shown: bodies.RulesShown = self.asked("/money-rules/", {})
        return shown

    def read_order(self, id: int) -> bodies.SupplyOrderShown:
        """One order."""
        shown: bodies.SupplyOrderShown = self.asked(f"/kit/orders/{id}/", {})
        return shown

    def read_order_list(self) -> bodies.OrderListTold:
        """What to order."""
        shown: bodies.OrderListTold = self.asked("/kit/order-list/", {})
        return shown

    def read_outside_calendar(self, id: int) -> bodies.OutsideShown:
        """One calendar of a van."""
        shown: bodies.OutsideShown = self.asked(f"/outside-calendars/{id}/", {})
        return shown

    def read_owed(self, *, currency: str | None = None) -> bodies.OwedTold:
        """Who owes how much."""
        shown: bodies.OwedTold = self.asked("/owed/", {"currency": currency})
        return shown

    def read_payer(self, id: int) -> bodies.PayerShown:
        """One payer."""
        shown: bodies.PayerShown = self.asked(f"/payers/{id}/", {})
        return shown

    def read_payment(self, id: int) -> bodies.PaymentShown:
        """One payment."""
        shown: bodies.PaymentShown = self.asked(f"/payments/{id}/", {})
        return shown

    def read_period_lock(self) -> bodies.LockTold:
        """Up to when the books are closed."""
        shown: bodies.LockTold = self.asked("/period-lock/", {})
        return shown

    def read_plan(self, id: int) -> bodies.WholePlanShown:
        """One week plan."""
        shown: bodies.WholePlanShown = self.asked(f"/plans/{id}/", {})
        return shown

    def read_plan_change(self, id: int) -> bodies.ChangesShown:
        """What the new plan changes."""
        shown: bodies.ChangesShown = self.asked(f"/plans/{id}/change/", {})
        return shown

    def read_plan_problem(self, id: int) -> bodies.ProblemShown:
        """What the plan was made of."""
        shown: bodies.ProblemShown = self.asked(f"/plans/{id}/problem/", {})
        return shown

    def read_price_list(self, id: int) -> bodies.PriceListShown:
        """One price list."""
        shown: bodies.PriceListShown = self.asked(f"/price-lists/{id}/", {})
        return shown

    def read_ready_to_bill(self) -> bodies.ReadyTold:
        """What is ready to be billed."""
        shown: bodies.ReadyTold = self.asked("/ready-to-bill/", {})
        return shown

    def read_recheck(self, id: int) -> bodies.RecheckShown:
        """One re-check."""
        shown: bodies.RecheckShown = self.asked(f"/rechecks/{id}/", {})
        return shown

    def read_reference_rate(self, id: int) -> bodies.ReferenceRateShown:
        """One reference rate."""
        shown: bodies.ReferenceRateShown = self.asked(f"/reference-rates/{id}/", {})
        return shown

    def read_reminder(self, id: int) -> bodies.ReminderShown:
        """One reminder."""
        shown: bodies.ReminderShown = self.asked(f"/reminders/{id}/", {})
        return shown

    def read_reminder_pdf(self, id: int) -> bytes:
        """A reminder as PDF."""
        return self.file(f"/reminders/{id}/reminder.pdf", {})

    def read_report(self, id: int) -> bodies.WholeReportShown:
        """One report."""
        shown: bodies.WholeReportShown = self.asked(f"/reports/{id}/", {})
        return shown

    def read_scoring(self, id: int) -> bodies.WholeRoundShown:
        """One round of mobility scores."""
        shown: bodies.WholeRoundShown = self.asked(f"/scorings/{id}/", {})
        return shown

    def read_stock(self) -> bodies.StockTold:
        """What lies where."""
        shown: bodies.StockTold = self.asked("/kit/stock/", {})
        return shown

    def read_tax_rate(self, id: int) -> bodies.TaxRateShown:
        """One tax rate."""
        shown: bodies.TaxRateShown = self.asked(f"/tax-rates/{id}/", {})
        return shown

    def read_tax_suggestions(self) -> bodies.SuggestionsTold:
        """The country's tax rates."""
        shown: bodies.SuggestionsTold = self.asked("/tax-suggestions/", {})
        return shown

    def read_tonight(self) -> bodies.EveningTold:
        """What to do this evening."""
        shown: bodies.EveningTold = self.asked("/kit/tonight/", {})
        return shown

    def read_trim(self, id: int) -> bodies.TrimShown:
        """One cow at the crush."""
        shown: bodies.TrimShown = self.asked(f"/trims/{id}/", {})
        return shown

    def read_van(self, id: int) -> bodies.VanShown:
        """One van."""
        shown: bodies.VanShown = self.asked(f"/vans/{id}/", {})
        return shown

    def read_van_check(self, id: int, *, day: str | None = None) -> bodies.VanCheckTold:
        """What a van needs for a day."""
        shown: bodies.VanCheckTold = self.asked(f"/vans/{id}/check/", {"day": day})
        return shown

    def read_visit(self, id: int) -> bodies.WholeVisitShown:
        """One visit."""
        shown: bodies.WholeVisitShown = self.asked(f"/visits/{id}/", {})
        return shown

    def read_wash_list(self) -> bodies.WashTold:
        """What is to be washed."""
        shown: bodies.WashTold = self.asked("/kit/wash/", {})
        return shown

    def read_watch(self, id: int) -> bodies.WholeWatchShown:
        """One watch."""
        shown: bodies.WholeWatchShown = self.asked(f"/watches/{id}/", {})
        return shown

    def read_watch_contact(self, id: int) -> bodies.WatchContactShown:
        """One who is told."""
        shown: bodies.WatchContactShown = self.asked(f"/watch-contacts/{id}/", {})
        return shown

    def read_watch_rules(self) -> bodies.WatchRulesShown:
        """The rules of the watch."""
        shown: bodies.WatchRulesShown = self.asked("/watch-rules/", {})
        return shown

    def read_week_problem(self, week: str) -> bodies.ProblemShown:
        """What there is to plan."""
        shown: bodies.ProblemShown = self.asked(f"/weeks/{week}/problem/", {})
        return shown

    def receive_order(
        self, id: int, body: bodies.ArrivalWordRequest, *, key: str = ""
    ) -> bodies.SupplyOrderShown:
        """An order has come."""
        shown: bodies.SupplyOrderShown = self.done(f"/kit/orders/{id}/arrived/", body, key)
        return shown

    def remove_contact(self, id: int, *, match: str = "") -> None:
        """Take a person off a farm's list."""
        self.changed("DELETE", f"/contacts/{id}/", None, match)

    def remove_outside_calendar(self, id: int, *, match: str = "") -> None:
        """Take it off the list."""
        self.changed("DELETE", f"/outside-calendars/{id}/", None, match)

    def replan_called_off(
        self, week: str, body: bodies.OffSaidRequest, *, key: str = ""
    ) -> bodies.HappenedShown:
        """A farm calls its visit off."""
        shown: bodies.HappenedShown = self.done(f"/weeks/{week}/happenings/called-off/", body, key)
        return shown

    def replan_ill(self, week: str, body: bodies.IllSaidRequest, *, key: str = "") -> bodies.HappenedShown:
        """A trimmer is ill."""
        shown: bodies.HappenedShown = self.done(f"/weeks/{week}/happenings/ill/", body, key)
        return shown

    def replan_lame(self, week: str, body: bodies.LameSaidRequest, *, key: str = "") -> bodies.HappenedShown:
        """A lame cow cannot wait."""
        shown: bodies.HappenedShown = self.done(f"/weeks/{week}/happenings/lame/", body, key)
        return shown

    def replan_late(self, week: str, body: bodies.LateSaidRequest, *, key: str = "") -> bodies.HappenedShown:
        """A van is running late."""
        shown: bodies.HappenedShown = self.done(f"/weeks/{week}/happenings/late/", body, key)
        return shown

    def replan_van_out(
        self, week: str, body: bodies.OutSaidRequest, *, key: str = ""
    ) -> bodies.HappenedShown:
        """A crush or van is out of action."""
        shown: bodies.HappenedShown = self.done(f"/weeks/{week}/happenings/van-out/", body, key)
        return shown

    def save_cows(self, id: int, body: bodies.CowRowsRequest, *, key: str = "") -> bodies.CowsKept:
        """Many cows of a farm at once."""
        shown: bodies.CowsKept = self.done(f"/farms/{id}/cows/bulk/", body, key)
        return shown

    def say_well(self, id: int, body: bodies.WellWordRequest, *, key: str = "") -> bodies.WatchShown:
        """I am well."""
        shown: bodies.WatchShown = self.done(f"/watches/{id}/well/", body, key)
        return shown

    def send_bank_file(
        self, body: bytes, *, file_name: str | None = None, key: str = ""
    ) -> bodies.ReadingTold:
        """Send a file of the bank as it is."""
        shown: bodies.ReadingTold = self.done(
            "/bank-files/whole/", body, key, query={"file_name": file_name}, kind="application/octet-stream"
        )
        return shown

    def send_farm_statement(
        self, id: int, body: bodies.DaysWordRequest, *, key: str = ""
    ) -> bodies.MailsTold:
        """Send a farm's statement."""
        shown: bodies.MailsTold = self.done(f"/farms/{id}/send-statement/", body, key)
        return shown

    def send_invoice(self, id: int, body: bodies.MailWordRequest, *, key: str = "") -> bodies.MailsTold:
        """Send an invoice."""
        shown: bodies.MailsTold = self.done(f"/invoices/{id}/send/", body, key)
        return shown

    def send_photo(
        self,
        id: int,
        uid: str,
        body: bytes,
        *,
        record: str,
        taken_at: str,
        foot: bodies.Foot | None = None,
        sent_at: str | None = None,
    ) -> bodies.PhotoKeptShown:
        """Send a photo."""
        shown: bodies.PhotoKeptShown = self.sent(
            "PUT",
            f"/visits/{id}/crush/photos/{uid}/",
            {"record": record, "foot": foot, "taken_at": taken_at, "sent_at": sent_at},
            body,
            kind="image/jpeg",
        )
        return shown

    def send_writings(self, id: int, body: bodies.CrushBatchWordRequest) -> bodies.CrushBatchShown:
        """Send what was noted at the crush."""
        shown: bodies.CrushBatchShown = self.sent("POST", f"/visits/{id}/crush/writings/", {}, body)
        return shown

    def set_bank_entry_aside(
        self, id: int, body: bodies.BecauseWordRequest, *, key: str = ""
    ) -> bodies.BankEntryShown:
        """Set a booking aside."""
        shown: bodies.BankEntryShown = self.done(f"/bank-entries/{id}/set-aside/", body, key)
        return shown

    def set_day_off(self, id: int, body: bodies.DayOffWordRequest, *, key: str = "") -> bodies.VanShown:
        """A van stays in on a day."""
        shown: bodies.VanShown = self.done(f"/vans/{id}/days-off/", body, key)
        return shown

    def set_draft_amount(self, id: int, body: bodies.WholeWordRequest, *, key: str = "") -> bodies.DraftShown:
        """Put a discount or a charge on a draft."""
        shown: bodies.DraftShown = self.done(f"/drafts/{id}/amounts/", body, key)
        return shown

    def set_logo(self, body: bodies.LogoWordRequest, *, key: str = "") -> bodies.RulesShown:
        """Set the logo."""
        shown: bodies.RulesShown = self.done("/money-rules/logo/", body, key)
        return shown

    def set_mileage_rate(
        self, body: bodies.MileageRateWordRequest, *, key: str = ""
    ) -> bodies.MileageRateShown:
        """A mileage allowance from a day on."""
        shown: bodies.MileageRateShown = self.done("/mileage-rates/", body, key)
        return shown

    def set_milkings(
        self, id: int, body: bodies.PatchedMilkingsWordRequest, *, match: str = ""
    ) -> bodies.MilkingsShown:
        """Say when a farm milks."""
        shown: bodies.MilkingsShown = self.changed("PATCH", f"/farms/{id}/milkings/", body, match)
        return shown

    def set_off_credit_note(
        self, id: int, body: bodies.SetOffWordRequest, *, key: str = ""
    ) -> bodies.AllocationShown:
        """Set a credit note off."""
        shown: bodies.AllocationShown = self.done(f"/invoices/{id}/set-off/", body, key)
        return shown

    def set_payment_against(
        self, id: int, body: bodies.SharesWordRequest, *, key: str = ""
    ) -> bodies.PaymentShown:
        """Set a payment against invoices."""
        shown: bodies.PaymentShown = self.done(f"/payments/{id}/set-against/", body, key)
        return shown

    def set_prices(self, body: bodies.PriceListWordRequest, *, key: str = "") -> bodies.PriceListShown:
        """Prices from a day on."""
        shown: bodies.PriceListShown = self.done("/price-lists/", body, key)
        return shown

    def set_reference_rate(
        self, body: bodies.ReferenceRateWordRequest, *, key: str = ""
    ) -> bodies.ReferenceRateShown:
        """A reference rate from a day on."""
        shown: bodies.ReferenceRateShown = self.done("/reference-rates/", body, key)
        return shown

    def set_tax_rate(self, body: bodies.TaxRateWordRequest, *, key: str = "") -> bodies.TaxRateShown:
        """A tax rate from a day on."""
        shown: bodies.TaxRateShown = self.done("/tax-rates/", body, key)
        return shown

    def sharpen_blades(self, body: bodies.SharpeningWordRequest, *, key: str = "") -> bodies.SharpeningsTold:
        """Knives were sharpened."""
        shown: bodies.SharpeningsTold = self.done("/kit/sharpen/", body, key)
        return shown

    def start_issue_run(self, body: bodies.RunWordRequest, *, key: str = "") -> bodies.RunTold:
        """Issue many drafts."""
        shown: bodies.RunTold = self.done("/drafts/issue/", body, key)
        return shown

    def start_visit(self, id: int, body: bodies.StartWordRequest, *, key: str = "") -> bodies.VisitShown:
        """Begin the work."""
        shown: bodies.VisitShown = self.done(f"/visits/{id}/start/", body, key)
        return shown

    def stop_thinking(self, id: int, *, key: str = "") -> bodies.PlanShown:
        """Stop thinking."""
        shown: bodies.PlanShown = self.done(f"/plans/{id}/enough/", None, key)
        return shown

    def strike_draft_cow(
        self, id: int, body: bodies.DraftCowWordRequest, *, key: str = ""
    ) -> bodies.DraftListShown:
        """Leave this cow at home."""
        shown: bodies.DraftListShown = self.done(f"/visits/{id}/draft/strike/", body, key)
        return shown

    def strike_draft_line(
        self, id: int, body: bodies.ReasonWordRequest, *, key: str = ""
    ) -> bodies.DraftShown:
        """Strike a line off a draft."""
        shown: bodies.DraftShown = self.done(f"/draft-lines/{id}/strike/", body, key)
        return shown

    def switch_message(self, body: bodies.SwitchWordRequest, *, key: str = "") -> bodies.MessageHoursShown:
        """Switch a message on or off."""
        shown: bodies.MessageHoursShown = self.done("/message-rules/switch/", body, key)
        return shown

    def take_back_draft_change(self, id: int, change_pk: int, *, key: str = "") -> bodies.DraftListShown:
        """Take a change of the list back."""
        shown: bodies.DraftListShown = self.done(
            f"/visits/{id}/draft/changes/{change_pk}/take-back/", None, key
        )
        return shown

    def take_back_payment(
        self, id: int, body: bodies.BecauseWordRequest, *, key: str = ""
    ) -> bodies.PaymentShown:
        """Take a payment back."""
        shown: bodies.PaymentShown = self.done(f"/payments/{id}/take-back/", body, key)
        return shown

    def take_held_hour(self, id: int, body: bodies.TakeWordRequest, *, key: str = "") -> bodies.VisitShown:
        """Take the hour."""
        shown: bodies.VisitShown = self.done(f"/held-hours/{id}/take/", body, key)
        return shown

    def take_in_journeys(self, body: bodies.DaysWordRequest, *, key: str = "") -> bodies.TakenInTold:
        """Take drives from the visits."""
        shown: bodies.TakenInTold = self.done("/journeys/take-in/", body, key)
        return shown

    def tell_hour(self, id: int, *, key: str = "") -> bodies.VisitShown:
        """The farm knows its hour."""
        shown: bodies.VisitShown = self.done(f"/visits/{id}/tell-hour/", None, key)
        return shown

    def try_watch(self, *, key: str = "") -> bodies.WatchShown:
        """Send a test."""
        shown: bodies.WatchShown = self.done("/watch-rules/try/", None, key)
        return shown

    def type_weather(self, body: bodies.WeatherWordRequest, *, key: str = "") -> bodies.WeatherShown:
        """Type the forecast of a day."""
        shown: bodies.WeatherShown = self.done("/kit/weather/", body, key)
        return shown

    def undo_allocation(
        self, id: int, body: bodies.BecauseWordRequest, *, key: str = ""
    ) -> bodies.InvoiceShown:
        """Undo what was set against an invoice."""
        shown: bodies.InvoiceShown = self.done(f"/allocations/{id}/undo/", body, key)
        return shown

    def unlock_stop(self, id: int, visit_pk: int, *, key: str = "") -> bodies.UnlockShown:
        """Take the lock off."""
        shown: bodies.UnlockShown = self.done(f"/plans/{id}/stops/{visit_pk}/unlock/", None, key)
        return shown

    def withdraw_erasure(self, id: int, *, key: str = "") -> bodies.ErasureShown:
        """Take the wish to be erased back."""
        shown: bodies.ErasureShown = self.done(f"/erasures/{id}/withdraw/", None, key)
        return shown

    def write_message_text(
        self, body: bodies.MessageTextWordRequest, *, key: str = ""
    ) -> bodies.MessageTextShown:
        """Write a text."""
        shown: bodies.MessageTextShown = self.done("/message-texts/write/", body, key)
        return shown

    def write_off_invoice(
        self, id: int, body: bodies.BillWriteOffWordRequest, *, key: str = ""
    ) -> bodies.AllocationShown:
        """Write an invoice off."""
        shown: bodies.AllocationShown = self.done(f"/invoices/{id}/write-off/", body, key)
        return shown

    def write_off_stock(self, body: bodies.WriteOffWordRequest, *, key: str = "") -> bodies.MovementsTold:
        """Stock was written off."""
        shown: bodies.MovementsTold = self.done("/kit/write-offs/", body, key)
        return shown
