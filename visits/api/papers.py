"""Reports of visits and letters to the vet, as they left the house."""

from django.http import HttpResponse
from rest_framework import serializers

from trimops.accounts.actions import Action
from trimops.api.kinds import FileApi, RowApi, RowsApi, StepApi
from trimops.api.op import Op, Said
from trimops.api.rows import RowContent
from trimops.tenancy.querysets import TenantQuerySet
from trimops.web.pdf_answer import pdf_answer
from visits.models import IssuedReport, ReferralLetter, Trim, Visit
from visits.services.issue_letter import issue_letter
from visits.services.issue_report import issue_report

PDF = "application/pdf"
PAPER = ["id", "version", "sha256", "made_at", "changed"]


class ReportShown(RowContent):
    """One version of a report. `changed` says what it changes against the one before; `mailed_to` is null for a farm
    client."""

    mailed_to = serializers.ListField(child=serializers.CharField(), allow_null=True)

    class Meta:
        model = IssuedReport
        fields = [*PAPER, "visit", "mailed_to"]

    def to_representation(self, instance: IssuedReport) -> Said:
        told: Said = super().to_representation(instance)
        return {**told, "mailed_to": None} if self.context["seat"].scope.is_farm_client else told


class WholeReportShown(ReportShown):
    """The same with what stands on it."""

    content = serializers.DictField(help_text="As values; the PDF is drawn from nothing else.")

    class Meta(ReportShown.Meta):
        fields = [*ReportShown.Meta.fields, "content"]


class LetterShown(RowContent):
    """One version of a letter to the vet."""

    class Meta:
        model = ReferralLetter
        fields = [*PAPER, "trim"]


class WholeLetterShown(LetterShown):
    """The same with what stands on it."""

    content = serializers.DictField(help_text="As values; the PDF is drawn from nothing else.")

    class Meta(LetterShown.Meta):
        fields = [*LetterShown.Meta.fields, "content"]


class ReportsApi(RowsApi[IssuedReport]):
    """The versions of a visit's report, oldest first. What was issued never changes; a later version says what it
    changes. The vet's part comes first on it: it says what was seen, and diagnoses nothing."""

    model = IssuedReport
    ops = {
        "get": Op(Action.SEE_WORK, "list_reports", "The reports of a visit", shows=ReportShown, lists=True)
    }

    def rows(self) -> TenantQuerySet[IssuedReport]:
        return super().rows().filter(visit=self.fetch(Visit, self.kwargs["pk"])).defer("pdf", "content")


class ReportApi(RowApi[IssuedReport]):
    """One version of the report of a visit, as it was issued."""

    model = IssuedReport
    ops = {"get": Op(Action.SEE_WORK, "read_report", "One report", shows=WholeReportShown)}


class ReportPdfApi(FileApi):
    """The PDF, byte by byte as it was issued."""

    ops = {"get": Op(Action.SEE_WORK, "fetch_report", "One report, printed", media=PDF)}

    def file(self) -> HttpResponse:
        row = self.fetch(IssuedReport, self.kwargs["pk"])
        return pdf_answer(bytes(row.pdf), f"visit-report-{row.visit_id}-version-{row.version}")


class IssueReportApi(StepApi[Visit]):
    """Issues the first version, or a later one where something was noted since; whoever gets reports is told by mail.
    Refused before the visit is finished (visit_not_finished), and where the newest version says all of it
    (nothing_new). A finished visit has its first version issued by itself."""

    model = Visit
    ops = {
        "post": Op(
            Action.KEEP_WORK, "issue_report", "Issue the report", shows=ReportShown, status=201, repeats=True
        )
    }

    def act(self, row: Visit, content: Said) -> IssuedReport:
        return issue_report(visit=row, at=self.now, by=self.seat.user)


class LettersApi(RowsApi[ReferralLetter]):
    """The letters by which cows of a visit were handed to the vet, with all their versions."""

    model = ReferralLetter
    ops = {
        "get": Op(
            Action.SEE_WORK,
            "list_letters",
            "The letters to the vet of a visit",
            shows=LetterShown,
            lists=True,
        )
    }

    def rows(self) -> TenantQuerySet[ReferralLetter]:
        visit = self.fetch(Visit, self.kwargs["pk"])
        return super().rows().filter(trim__visit=visit).defer("pdf", "content")


class LetterApi(RowApi[ReferralLetter]):
    """One version of a letter to the vet, as it was issued. It hands over what was seen and diagnoses nothing."""

    model = ReferralLetter
    ops = {"get": Op(Action.SEE_WORK, "read_letter", "One letter to the vet", shows=WholeLetterShown)}


class LetterPdfApi(FileApi):
    """The PDF, byte by byte as it was issued."""

    ops = {"get": Op(Action.SEE_WORK, "fetch_letter", "One letter, printed", media=PDF)}

    def file(self) -> HttpResponse:
        row = self.fetch(ReferralLetter, self.kwargs["pk"])
        return pdf_answer(bytes(row.pdf), f"letter-{row.trim_id}-version-{row.version}")


class IssueLetterApi(StepApi[Trim]):
    """Writes the letter that hands a cow to the vet: what was seen, and whom the trimmer told. It diagnoses, doses and
    prescribes nothing. Refused where nothing of her is the vet's (nothing_for_vet) or nothing is new (nothing_new)."""

    model = Trim
    ops = {
        "post": Op(
            Action.KEEP_WORK,
            "issue_letter",
            "Issue a letter to the vet",
            shows=LetterShown,
            status=201,
            repeats=True,
        )
    }

    def act(self, row: Trim, content: Said) -> ReferralLetter:
        return issue_letter(trim=row, at=self.now, by=self.seat.user)
