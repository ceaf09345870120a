"""Addresses of prices, of terms, and of how the money is kept."""

from django.urls import path

from invoicing.api import agreements, money_rules, prices, rates, tax_rates, terms

PRICES = [
    path("price-lists/", prices.PriceListsApi.as_view(), name="api_price_lists"),
    path("price-lists/<int:pk>/", prices.PriceListApi.as_view(), name="api_price_list"),
    path("tax-rates/", tax_rates.TaxRatesApi.as_view(), name="api_tax_rates"),
    path("tax-rates/<int:pk>/", tax_rates.TaxRateApi.as_view(), name="api_tax_rate"),
    path("tax-suggestions/", tax_rates.SuggestionsApi.as_view(), name="api_tax_suggestions"),
    path("farms/<int:pk>/agreements/", agreements.AgreementsApi.as_view(), name="api_farm_agreements"),
    path("agreements/<int:pk>/", agreements.AgreementApi.as_view(), name="api_agreement"),
    path("agreements/<int:pk>/end/", agreements.EndAgreementApi.as_view(), name="api_agreement_end"),
    path("farms/<int:pk>/terms/", terms.TermsApi.as_view(), name="api_farm_terms"),
    path("money-rules/", money_rules.RulesApi.as_view(), name="api_money_rules"),
    path("money-rules/logo/", money_rules.LogoApi.as_view(), name="api_money_logo"),
    path("reference-rates/", rates.ReferenceRatesApi.as_view(), name="api_reference_rates"),
    path("reference-rates/<int:pk>/", rates.ReferenceRateApi.as_view(), name="api_reference_rate"),
    path("mileage-rates/", rates.MileageRatesApi.as_view(), name="api_mileage_rates"),
    path("mileage-rates/<int:pk>/", rates.MileageRateApi.as_view(), name="api_mileage_rate"),
]
