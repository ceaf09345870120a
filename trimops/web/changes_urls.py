from django.urls import path

from trimops.web.changes_pages import (
    AllChangesPage,
    CowChangesPage,
    FarmChangesPage,
    InvoiceChangesPage,
    MemberChangesPage,
    PaymentChangesPage,
    PriceListChangesPage,
    VanChangesPage,
    VisitChangesPage,
)

urlpatterns = [
    path("", AllChangesPage.as_view(), name="changes"),
    path("visit/<int:pk>/", VisitChangesPage.as_view(), name="visit_changes"),
    path("cow/<int:pk>/", CowChangesPage.as_view(), name="cow_changes"),
    path("farm/<int:pk>/", FarmChangesPage.as_view(), name="farm_changes"),
    path("van/<int:pk>/", VanChangesPage.as_view(), name="van_changes"),
    path("invoice/<int:pk>/", InvoiceChangesPage.as_view(), name="invoice_changes"),
    path("payment/<int:pk>/", PaymentChangesPage.as_view(), name="payment_changes"),
    path("price-list/<int:pk>/", PriceListChangesPage.as_view(), name="price_list_changes"),
    path("person/<int:pk>/", MemberChangesPage.as_view(), name="member_changes"),
]
