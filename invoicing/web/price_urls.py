from django.urls import path

from invoicing.web.price_pages import PricesPage

urlpatterns = [
    path("prices/", PricesPage.as_view(), name="prices"),
]
