"""An address that breaks, for tests/running/test_error_reports.py."""

from django.db import IntegrityError
from django.http import HttpRequest, HttpResponse
from django.urls import path
from django.views.decorators.csrf import csrf_exempt


@csrf_exempt
def broken(request: HttpRequest, secret: str) -> HttpResponse:
    farm, address = request.POST["farm"], request.POST["address"]
    raise IntegrityError(
        f"broke at /bill/{secret}/ for {address}\nDETAIL:  Failing row contains (5, {farm}, 54.1)."
    )


urlpatterns = [path("bill/<str:secret>/", broken)]
