from invoicing.domain.billing_rhythm import BillingRhythm


def test_each_rhythm_has_words():
    assert {rhythm.label for rhythm in BillingRhythm} == {"Each visit", "Each month"}
