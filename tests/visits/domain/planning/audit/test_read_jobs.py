from visits.domain.planning.audit.part import Faults, Part
from visits.domain.planning.audit.read_jobs import read_job


def test_only_four_keys_are_needed_and_an_empty_list_of_crews_is_nobody():
    faults = Faults()
    site = [Part({"id": "f"}, "", "id", faults)]
    least = {"id": "j", "site": "f", "minutes": 1.5, "windows": []}
    job = read_job(Part(least, "jobs[0]", "id site minutes windows crews", faults), site, [])
    assert (job.length, job.cows, job.crews, job.leave_out_cost) == (90_000_000, 0, None, None)
    none = read_job(
        Part({**least, "crews": []}, "jobs[0]", "id site minutes windows crews", faults), site, []
    )
    assert not none.takes("ann")
    assert faults == Faults()
