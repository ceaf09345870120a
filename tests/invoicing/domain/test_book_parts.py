from invoicing.domain.book_parts import BookPart


def test_each_list_has_words_of_its_own():
    assert len({(part.label, part.about) for part in BookPart}) == len(BookPart)
    assert all(part.value.replace("-", "").isalpha() for part in BookPart)
