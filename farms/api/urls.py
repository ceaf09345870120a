from django.urls import path

from farms.api.clients import ClientApi, ClientsApi
from farms.api.contacts import ContactApi, ContactsApi
from farms.api.cows import CalvingApi, CowApi, CowsApi, FarmCowsApi
from farms.api.cows_at_once import CowsAtOnceApi
from farms.api.erasures import ErasuresApi, ErasureWithdrawnApi
from farms.api.farms import FarmApi, FarmsApi
from farms.api.herd_lists import HerdListApi, HerdListAppliedApi, HerdListsApi
from farms.api.milkings import MilkingsApi
from farms.api.payers import PayerApi, PayersApi
from farms.api.vet_passes import VetPassClosedApi, VetPassesApi

urlpatterns = [
    path("farms/", FarmsApi.as_view(), name="api_farms"),
    path("farms/<int:pk>/", FarmApi.as_view(), name="api_farm"),
    path("farms/<int:pk>/milkings/", MilkingsApi.as_view(), name="api_milkings"),
    path("farms/<int:pk>/contacts/", ContactsApi.as_view(), name="api_contacts"),
    path("farms/<int:pk>/cows/", FarmCowsApi.as_view(), name="api_farm_cows"),
    path("farms/<int:pk>/cows/bulk/", CowsAtOnceApi.as_view(), name="api_cows_at_once"),
    path("farms/<int:pk>/herd-lists/", HerdListsApi.as_view(), name="api_herd_lists"),
    path("farms/<int:pk>/clients/", ClientsApi.as_view(), name="api_clients"),
    path("farms/<int:pk>/vet-passes/", VetPassesApi.as_view(), name="api_vet_passes"),
    path("farms/<int:pk>/erasures/", ErasuresApi.as_view(), name="api_erasures"),
    path("contacts/<int:pk>/", ContactApi.as_view(), name="api_contact"),
    path("payers/", PayersApi.as_view(), name="api_payers"),
    path("payers/<int:pk>/", PayerApi.as_view(), name="api_payer"),
    path("cows/", CowsApi.as_view(), name="api_cows"),
    path("cows/<int:pk>/", CowApi.as_view(), name="api_cow"),
    path("cows/<int:pk>/calvings/", CalvingApi.as_view(), name="api_calving"),
    path("herd-lists/<int:pk>/", HerdListApi.as_view(), name="api_herd_list"),
    path("herd-lists/<int:pk>/apply/", HerdListAppliedApi.as_view(), name="api_herd_list_applied"),
    path("clients/<int:pk>/", ClientApi.as_view(), name="api_client"),
    path("vet-passes/<int:pk>/close/", VetPassClosedApi.as_view(), name="api_vet_pass_closed"),
    path("erasures/<int:pk>/withdraw/", ErasureWithdrawnApi.as_view(), name="api_erasure_withdrawn"),
]
