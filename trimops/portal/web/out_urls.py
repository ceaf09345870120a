"""What leaves the house: a farm's or a person's data, the vet's link; and what is erased, or not kept for ever."""

from django.urls import path

from trimops.portal.web.data_pages import (
    PortalDataAde,
    PortalDataAll,
    PortalDataCsv,
    PortalDataPage,
    PortalDataXlsx,
    PortalErasePage,
    PortalEraseWithdrawPage,
)
from trimops.portal.web.erase_pages import FarmDataAll, FarmDataPage, FarmErasePage
from trimops.portal.web.person_pages import (
    ContactDataAll,
    OwnDataAll,
    OwnDataPage,
    PersonDataAll,
    PersonDataPage,
    PersonErasePage,
)
from trimops.portal.web.retention_page import RetentionPage
from trimops.portal.web.vet_pages import (
    VetCowPage,
    VetDeskPage,
    VetHerdPage,
    VetLetterPaper,
    VetPhotoPage,
    VetReportPaper,
)
from trimops.portal.web.vet_pass_pages import (
    PortalVetClosePage,
    PortalVetPage,
    VetPassClosePage,
    VetPassesPage,
)

urlpatterns = [
    path("my-farm/data/", PortalDataPage.as_view(), name="portal_data"),
    path("my-farm/data/tables.zip", PortalDataCsv.as_view(), name="portal_data_csv"),
    path("my-farm/data/tables.xlsx", PortalDataXlsx.as_view(), name="portal_data_xlsx"),
    path("my-farm/data/icar-ade.zip", PortalDataAde.as_view(), name="portal_data_ade"),
    path("my-farm/data/everything.zip", PortalDataAll.as_view(), name="portal_data_all"),
    path("my-farm/data/erase/", PortalErasePage.as_view(), name="portal_erase"),
    path("my-farm/data/erase/<int:pk>/back/", PortalEraseWithdrawPage.as_view(), name="portal_erase_back"),
    path("my-farm/vet/", PortalVetPage.as_view(), name="portal_vet"),
    path("my-farm/vet/<int:pk>/close/", PortalVetClosePage.as_view(), name="portal_vet_close"),
    path("farms/<int:pk>/vet/", VetPassesPage.as_view(), name="vet_passes"),
    path("farms/vet/<int:pk>/close/", VetPassClosePage.as_view(), name="vet_pass_close"),
    path("farms/<int:pk>/data/", FarmDataPage.as_view(), name="farm_data"),
    path("farms/<int:pk>/data/everything.zip", FarmDataAll.as_view(), name="farm_data_all"),
    path("farms/<int:pk>/data/erase/", FarmErasePage.as_view(), name="farm_erase"),
    path("people/kept/", RetentionPage.as_view(), name="retention"),
    path("people/me/data/", OwnDataPage.as_view(), name="own_data"),
    path("people/me/data/everything.zip", OwnDataAll.as_view(), name="own_data_all"),
    path("people/<int:pk>/data/", PersonDataPage.as_view(), name="person_data"),
    path("people/<int:pk>/data/everything.zip", PersonDataAll.as_view(), name="person_data_all"),
    path("people/<int:pk>/data/erase/", PersonErasePage.as_view(), name="person_erase"),
    path("farms/<int:farm_pk>/contacts/<int:pk>/data.zip", ContactDataAll.as_view(), name="contact_data_all"),
    path("for-the-vet/<str:secret>/", VetDeskPage.as_view(), name="vet_desk"),
    path("for-the-vet/<str:secret>/reports/<int:pk>.pdf", VetReportPaper.as_view(), name="vet_report"),
    path("for-the-vet/<str:secret>/letters/<int:pk>.pdf", VetLetterPaper.as_view(), name="vet_letter"),
    path("for-the-vet/<str:secret>/cows/<int:pk>/", VetCowPage.as_view(), name="vet_cow"),
    path("for-the-vet/<str:secret>/photos/<uuid:uid>.jpg", VetPhotoPage.as_view(), name="vet_photo"),
    path("for-the-vet/<str:secret>/feet/", VetHerdPage.as_view(), name="vet_herd"),
]
