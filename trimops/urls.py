"""All addresses. Each app keeps its own; names are unique over the project."""

from django.conf import settings
from django.urls import URLPattern, URLResolver, include, path

from trimops.web.home import HomePage

# Read by the sign-in library, where one of its own limits is met.
handler429 = "trimops.web.problem_pages.too_often_page"
handler400 = "trimops.web.problem_pages.malformed_page"
handler403 = "trimops.web.problem_pages.not_allowed_page"
handler404 = "trimops.web.problem_pages.not_found_page"
handler500 = "trimops.web.problem_pages.fault_page"

urlpatterns: list[URLPattern | URLResolver] = [
    path("", HomePage.as_view(), name="home"),
    path("account/", include("trimops.accounts.web.account_urls")),
    path("account/", include("allauth.account.urls")),
    path("account/second-step/", include("allauth.mfa.urls")),
    path("account/devices/", include("allauth.usersessions.urls")),
    path("outgoing/", include("trimops.web.outgoing_urls")),
    path("stuck/", include("trimops.web.stuck_urls")),
    path("changes/", include("trimops.web.changes_urls")),
    path("webhooks/", include("trimops.web.webhook_urls")),
    path("people/", include("trimops.accounts.web.urls")),
    path("farms/", include("farms.web.urls")),
    path("", include("visits.web.urls")),
    path("api/", include("trimops.api.urls")),
    path("api/v1/", include("farms.api.urls")),
    path("api/v1/", include("trimops.portal.api.urls")),
    path("api/v1/", include("visits.api.urls")),
    path("api/v1/", include("invoicing.api.urls")),
    path("invoices/", include("invoicing.web.urls")),
    path("stop/", include("farms.web.stop_urls")),
    path("list/", include("visits.web.messages.link_urls")),
    path("bill/", include("invoicing.web.link_urls")),
    path("my-farm/", include("trimops.portal.web.urls")),
    path("", include("trimops.portal.web.out_urls")),
]

if settings.DEBUG:
    urlpatterns.append(path("look/", include("trimops.web.look_urls")))
