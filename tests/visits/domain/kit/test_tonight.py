from visits.domain.kit.tonight import EveningJob, EveningTask, evening_title, in_order


def task(job, name="Van 1", number=1):
    return EveningTask(EveningJob(job), name, "what", "why", 1, number)


def test_the_title_adds_up_what_is_to_be_done():
    tasks = [task("load", number=4), task("load", "Van 2", 2), task("grind", number=2), task("order", "Glue")]
    assert evening_title(tasks) == "Tonight: load 6 things, grind 2 edges, order Glue"


def test_one_is_named_and_more_are_counted():
    two = [task("order", "Glue"), task("order", "Wraps")]
    assert evening_title(two[:1]) == "Tonight: order Glue"
    assert evening_title(two) == "Tonight: order 2 things"


def test_places_are_counted_once_whatever_is_to_be_counted_there():
    van = [task("count", "Glue"), task("count", "Wraps")]
    store = EveningTask(EveningJob.COUNT, "Store", "all of it", "why", 2)
    assert evening_title(van) == "Tonight: count in 1 place"
    assert evening_title([*van, store]) == "Tonight: count in 2 places"


def test_one_thing_is_one_thing_and_nothing_is_said_so():
    assert evening_title([task("load")]) == "Tonight: load 1 thing"
    assert evening_title([]) == "Nothing is to be done tonight"


def test_the_list_goes_by_what_comes_first_in_the_evening():
    mixed = [task("date"), task("order", "Wraps"), task("order", "Glue"), task("load")]
    assert [(each.job.value, each.name) for each in in_order(mixed)] == [
        ("load", "Van 1"),
        ("order", "Glue"),
        ("order", "Wraps"),
        ("date", "Van 1"),
    ]
