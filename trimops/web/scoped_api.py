"""The base of every JSON address behind sign-in: closed unless it names the roles that may open it."""

from datetime import datetime
from typing import ClassVar, TypeVar

from django.db import models
from django.utils import timezone
from rest_framework.exceptions import PermissionDenied
from rest_framework.request import Request
from rest_framework.views import APIView

from trimops.accounts.roles import Role
from trimops.kernel.errors import NotFound
from trimops.kernel.scope import Scope
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet
from trimops.web.seat import Seat, seat_of

M = TypeVar("M", bound=TenantModel)


class ScopedApi(APIView):
    """Answers only the roles in `roles` (none by default), each within its scope, as `ScopedPage` does for pages."""

    roles: ClassVar[frozenset[Role]] = frozenset()

    def initial(self, request: Request, *args: object, **kwargs: object) -> None:
        super().initial(request, *args, **kwargs)
        seat = seat_of(request._request)
        if seat is None or seat.role not in self.roles:
            raise PermissionDenied("This is not open to your part in the business.")
        self.seat: Seat = seat
        self.now: datetime = timezone.now()

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
