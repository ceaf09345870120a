from trimops.audit.domain.entry_kinds import EntryKind


def test_each_kind_can_be_told_in_words():
    assert [kind.label for kind in EntryKind] == ["Added", "Changed", "Taken away", "Handed out"]
