"""All addresses. Each app keeps its own; names are unique over the project."""

from django.conf import settings
from django.urls import URLPattern, URLResolver, include, path

from trimops.web.home import HomePage

urlpatterns: list[URLPattern | URLResolver] = [
    path("", HomePage.as_view(), name="home"),
    path("account/", include("allauth.account.urls")),
    path("outgoing/", include("trimops.web.outgoing_urls")),
    path("stuck/", include("trimops.web.stuck_urls")),
    path("webhooks/", include("trimops.web.webhook_urls")),
    path("people/", include("trimops.accounts.web.urls")),
    path("farms/", include("farms.web.urls")),
    path("", include("visits.web.urls")),
    path("api/v1/", include("visits.api.urls")),
    path("invoices/", include("invoicing.web.urls")),
    path("stop/", include("farms.web.stop_urls")),
    path("list/", include("visits.web.messages.link_urls")),
    path("bill/", include("invoicing.web.link_urls")),
    path("my-farm/", include("trimops.portal.web.urls")),
    path("", include("trimops.portal.web.out_urls")),
]

if settings.DEBUG:
    urlpatterns.append(path("look/", include("trimops.web.look_urls")))
