"""The door: it leads each person to the page of their day."""

from django.http import HttpRequest, HttpResponseBase
from django.shortcuts import redirect

from trimops.accounts.actions import Action
from trimops.accounts.roles import Role
from trimops.web.scoped_page import ScopedPage

FIRST_PAGE = {
    Role.OWNER: "this_week",
    Role.TRIMMER: "this_week",
    Role.OFFICE: "invoice_list",
    Role.FARM: "portal_home",
}


class HomePage(ScopedPage):
    does = Action.COME_IN

    def get(self, request: HttpRequest) -> HttpResponseBase:
        return redirect(FIRST_PAGE[self.seat.role])
