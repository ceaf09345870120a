from visits.documents.map_labels import Name, along, around, placed_names

SHEET = (0, 0, 100, 100)


def test_a_name_stands_to_the_right_when_there_is_room():
    name = Name("Low Moss", (50, 50), 2)
    left, top, right, bottom = placed_names([name], [], SHEET, 3)[name]
    assert left > 52
    assert top < 50 < bottom
    assert right <= 100


def test_a_name_at_the_right_edge_goes_to_the_left():
    name = Name("Low Moss", (97, 50), 2)
    assert placed_names([name], [], SHEET, 3)[name][2] < 95


def test_names_keep_off_lines_marks_and_each_other():
    names = [Name(f"Farm {i}", (30 + 6 * i, 50), 2) for i in range(6)]
    taken = [around(name.at, 2) for name in names] + along((0, 50), (100, 50))
    boxes = list(placed_names(names, taken, SHEET, 3).values())
    for i, one in enumerate(boxes):
        for other in boxes[i + 1 :] + taken:
            assert not (one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3])


def test_a_name_that_finds_no_room_is_left_to_the_key():
    crowded = [(0, 0, 100, 100)]
    assert placed_names([Name("Low Moss", (50, 50), 2)], crowded, SHEET, 3) == {}
