from farms.domain.hygiene import HygieneLevel


def test_cleaner_herds_come_before_dirtier_ones():
    order = ["Closed, clean herd", "Usual", "Digital dermatitis active", "Serious infection or restriction"]
    assert [level.label for level in sorted(HygieneLevel)] == order
    assert [int(level) for level in HygieneLevel] == [0, 1, 2, 3]


def test_the_highest_level_defers_to_the_vet_and_the_local_rules():
    assert "vet" in HygieneLevel.RESTRICTED.meaning
    assert "local rules" in HygieneLevel.RESTRICTED.meaning
