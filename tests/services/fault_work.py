"""What people do while the servers fail: visits are finished, invoices issued, the send button pressed."""

import time

from django.core.management import call_command
from django.db import connection
from django.utils import timezone

from invoicing.models import Invoice
from invoicing.services.issue_run import start_issue_run
from tests.factories import finish
from tests.services.fault_houses import FaultHouse, build_house
from tests.services.fault_run import through_faults
from visits.models import Visit
from visits.services.visit_change import VisitCannotMove

PRESS_AGAIN = 20.0
"""Seconds until the office asks again for an invoice that is still a draft."""


def build_all(count: int) -> list[FaultHouse]:
    now = timezone.now()
    return [build_house(number, now) for number in range(count)]


def press_send() -> None:
    """A person wants what waits tried now, since the pauses between tries of a mail are minutes and hours."""
    through_faults(lambda: call_command("send_waiting", all=True, stdout=_Nowhere()))


class _Nowhere:
    def write(self, text: str) -> None:
        pass


class Hands:
    """One person at a desk: goes round the businesses until each has its visit finished and its invoices issued."""

    def __init__(self, houses: list[FaultHouse]) -> None:
        self._left = list(houses)
        self._asked: dict[int, float] = {}
        self.stops, self.is_done, self.fault = False, False, ""

    @property
    def left(self) -> int:
        return len(self._left)

    def work(self) -> None:
        try:
            for house in list(self._left):
                through_faults(lambda house=house: _finish(house))
            while self._left and not self.stops:
                self._left = [
                    house for house in self._left if not through_faults(lambda house=house: self._bill(house))
                ]
                time.sleep(1)
            self.is_done = True
        except Exception as fault:
            self.fault = repr(fault)
        finally:
            connection.close()

    def _bill(self, house: FaultHouse) -> bool:
        """Whether both of its visits are billed by issued invoices."""
        rows = Invoice.objects.within(house.house.scope)
        drafts = list(rows.drafts())
        now = time.monotonic()
        if drafts and now - self._asked.get(house.house.business.pk, -PRESS_AGAIN) >= PRESS_AGAIN:
            start_issue_run(invoices=drafts, by=house.house.office, send=True)
            self._asked[house.house.business.pk] = now
        return not drafts and rows.issued().filter(visit_id__in=house.visits).count() >= len(house.visits)


def _finish(house: FaultHouse) -> None:
    visit = Visit.objects.within(house.house.scope).select_related("van__trimmer").get(pk=house.today.pk)
    try:
        finish(visit, house.house.trimmer, timezone.now())
    except VisitCannotMove:
        return  # because: the answer was lost, not what was done
