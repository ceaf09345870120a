from invoicing.domain.pricing import PriceItem


def test_every_item_of_a_price_list_has_words_and_a_unit():
    assert len({item.label_with_unit for item in PriceItem}) == len(PriceItem)
    assert PriceItem.MILE.label == PriceItem.TRAVEL.label
    assert {item.unit for item in PriceItem} == {"C62", "KMT", "SMI"}
    assert (PriceItem.KILOMETRE.unit, PriceItem.MILE.unit) == ("KMT", "SMI")
