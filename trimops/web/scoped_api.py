"""The base of every JSON address behind sign-in: closed unless it names what it does."""

from collections.abc import Mapping
from datetime import datetime
from typing import ClassVar, TypeVar

from django.db import models
from django.utils import timezone
from rest_framework.exceptions import PermissionDenied
from rest_framework.request import Request
from rest_framework.response import Response
from rest_framework.views import APIView

from trimops.accounts.actions import Action, Does, action_of
from trimops.kernel.errors import NotFound
from trimops.kernel.scope import Scope
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet
from trimops.web.api_rates import ApiRate
from trimops.web.page_rates import Cost
from trimops.web.seat import Seat, seat_of

M = TypeVar("M", bound=TenantModel)


class ScopedApi(APIView):
    """Answers only who may do what it `does` (nothing by default), each within their scope, as `ScopedPage` does."""

    does: ClassVar[Does] = None
    costs: ClassVar[Mapping[str, Cost]] = {}
    throttle_classes = [ApiRate]

    def initial(self, request: Request, *args: object, **kwargs: object) -> None:
        super().initial(request, *args, **kwargs)
        seat = seat_of(request._request)
        if seat is None or not seat.allows(self.what_it_does()):
            raise PermissionDenied("This is not open to your part in the business.")
        self.seat: Seat = seat
        self.now: datetime = timezone.now()

    def perform_authentication(self, request: Request) -> None:
        # because: the library counts only whom it let in, and a stranger who tries tokens is to be slowed as well
        super().check_throttles(request)
        super().perform_authentication(request)

    def check_throttles(self, request: Request) -> None:
        """Done before it was asked who it is."""

    def what_it_does(self) -> Action | None:
        """What this call does; None is closed to all."""
        return action_of(self.does, self.request.method or "")

    def options(self, request: Request, *args: object, **kwargs: object) -> Response:  # type: ignore[override]
        # because: the library's answer describes the view from its own code; ours is the published description
        return self.http_method_not_allowed(request)

    @property
    def scope(self) -> Scope:
        return self.seat.scope

    def fetch(self, model: type[M], pk: int, *related: str) -> M:
        """The row of that key within the scope, else `NotFound` (404, also for another business's)."""
        rows: TenantQuerySet[M] = model._default_manager.all()  # type: ignore[assignment]
        try:
            return rows.within(self.scope).select_related(*related).get(pk=pk)
        except models.ObjectDoesNotExist:
            raise NotFound("There is nothing at this address.") from None
