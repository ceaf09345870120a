from django.urls import path

from invoicing.web.agreement_pages import AgreementEnd, AgreementsPage
from invoicing.web.price_pages import PriceListDrop, PriceListPage, PricesPage
from invoicing.web.rules_pages import MoneyLogo, MoneyRulesPage
from invoicing.web.tax_pages import TaxRateDrop, TaxRatesPage
from invoicing.web.terms_pages import FarmTermsPage

urlpatterns = [
    path("prices/", PricesPage.as_view(), name="prices"),
    path("prices/new/", PriceListPage.as_view(), name="price_list_new"),
    path("prices/<int:pk>/", PriceListPage.as_view(), name="price_list"),
    path("prices/<int:pk>/drop/", PriceListDrop.as_view(), name="price_list_drop"),
    path("tax-rates/", TaxRatesPage.as_view(), name="tax_rates"),
    path("tax-rates/<int:pk>/", TaxRatesPage.as_view(), name="tax_rate"),
    path("tax-rates/<int:pk>/drop/", TaxRateDrop.as_view(), name="tax_rate_drop"),
    path("farms/<int:pk>/agreements/", AgreementsPage.as_view(), name="agreements"),
    path("agreements/<int:pk>/end/", AgreementEnd.as_view(), name="agreement_end"),
    path("farms/<int:pk>/terms/", FarmTermsPage.as_view(), name="farm_terms"),
    path("rules/", MoneyRulesPage.as_view(), name="money_rules"),
    path("rules/logo/", MoneyLogo.as_view(), name="money_logo"),
]
