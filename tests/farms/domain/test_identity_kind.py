from farms.domain.identity_kind import IdentityKind


def test_only_tags_and_electronic_ids_name_one_animal_anywhere():
    unique = {kind for kind in IdentityKind if kind.is_unique_in_the_world}
    assert unique == {IdentityKind.OFFICIAL_TAG, IdentityKind.ELECTRONIC_ID}


def test_every_kind_has_a_word_of_its_own():
    assert len({kind.label for kind in IdentityKind}) == len(IdentityKind)
