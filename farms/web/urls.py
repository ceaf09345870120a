from django.urls import path

from farms.web.client_pages import FarmClientPage, FarmClientsPage
from farms.web.contact_pages import ContactPage, ContactsPage, PayersPage
from farms.web.farm_pages import FarmEditPage, FarmListPage, FarmPage, MilkingPage
from farms.web.herd_pages import CowEditPage, HerdListPage, HerdPreviewPage

urlpatterns = [
    path("", FarmListPage.as_view(), name="farm_list"),
    path("new/", FarmEditPage.as_view(), name="farm_new"),
    path("<int:pk>/", FarmPage.as_view(), name="farm"),
    path("<int:pk>/mend/", FarmEditPage.as_view(), name="farm_edit"),
    path("<int:pk>/milking/", MilkingPage.as_view(), name="milking"),
    path("payers/", PayersPage.as_view(), name="payers"),
    path("payers/<int:pk>/", PayersPage.as_view(), name="payer"),
    path("<int:pk>/contacts/", ContactsPage.as_view(), name="contacts"),
    path("<int:farm_pk>/contacts/<int:pk>/", ContactPage.as_view(), name="contact"),
    path("<int:pk>/people/", FarmClientsPage.as_view(), name="farm_clients"),
    path("<int:farm_pk>/people/<int:pk>/", FarmClientPage.as_view(), name="farm_client"),
    path("<int:farm_pk>/cows/new/", CowEditPage.as_view(), name="cow_new"),
    path("<int:farm_pk>/cows/<int:pk>/mend/", CowEditPage.as_view(), name="cow_edit"),
    path("<int:pk>/herd-list/", HerdListPage.as_view(), name="herd_list"),
    path("<int:farm_pk>/herd-list/<int:pk>/", HerdPreviewPage.as_view(), name="herd_preview"),
]
