"""The rows of tests/walls/routes.py for the API of farms."""

from tests.walls.route import Route
from trimops.accounts.actions import Action
from trimops.accounts.roles import EVERYONE

FARMS_API: dict[str, Route] = {
    "api_farms": Route(EVERYONE, does={"get": Action.SEE_FARMS, "post": Action.KEEP_FARMS}),
    "api_farm": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.SEE_FARMS, "patch": Action.KEEP_FARMS}),
    "api_milkings": Route(
        EVERYONE, {"pk": "farm"}, does={"get": Action.SEE_FARMS, "patch": Action.KEEP_FARMS}
    ),
    "api_contacts": Route(
        EVERYONE, {"pk": "farm"}, does={"get": Action.KEEP_FARMS, "post": Action.KEEP_FARMS}
    ),
    "api_farm_cows": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.SEE_COWS, "post": Action.KEEP_COWS}),
    "api_cows_at_once": Route(EVERYONE, {"pk": "farm"}, does={"post": Action.KEEP_COWS}),
    "api_herd_lists": Route(
        EVERYONE, {"pk": "farm"}, does={"get": Action.KEEP_COWS, "post": Action.KEEP_COWS}
    ),
    "api_clients": Route(
        EVERYONE, {"pk": "farm"}, does={"get": Action.LET_IN_CLIENTS, "post": Action.LET_IN_CLIENTS}
    ),
    "api_vet_passes": Route(
        EVERYONE, {"pk": "farm"}, does={"get": Action.KEEP_VET_PASSES, "post": Action.KEEP_VET_PASSES}
    ),
    "api_erasures": Route(
        EVERYONE, {"pk": "farm"}, does={"get": Action.TAKE_DATA_OUT, "post": Action.GIVE_OWN_DATA}
    ),
    "api_contact": Route(
        EVERYONE,
        {"pk": "contact"},
        does={"get": Action.KEEP_FARMS, "patch": Action.KEEP_FARMS, "delete": Action.KEEP_FARMS},
    ),
    "api_payers": Route(EVERYONE, does={"get": Action.KEEP_PAYERS, "post": Action.KEEP_PAYERS}),
    "api_payer": Route(
        EVERYONE, {"pk": "payer"}, does={"get": Action.KEEP_PAYERS, "patch": Action.KEEP_PAYERS}
    ),
    "api_cows": Route(EVERYONE, does={"get": Action.SEE_COWS}),
    "api_cow": Route(EVERYONE, {"pk": "cow"}, does={"get": Action.SEE_COWS, "patch": Action.KEEP_COWS}),
    "api_calving": Route(EVERYONE, {"pk": "cow"}, does={"post": Action.KEEP_COWS}),
    "api_herd_list": Route(EVERYONE, {"pk": "herd_import"}, does={"get": Action.KEEP_COWS}),
    "api_herd_list_applied": Route(EVERYONE, {"pk": "herd_import"}, does={"post": Action.KEEP_COWS}),
    "api_client": Route(
        EVERYONE,
        {"pk": "access"},
        does={"get": Action.LET_IN_CLIENTS, "patch": Action.LET_IN_CLIENTS, "delete": Action.LET_IN_CLIENTS},
    ),
    "api_vet_pass_closed": Route(EVERYONE, {"pk": "vet_pass"}, does={"post": Action.KEEP_VET_PASSES}),
    "api_erasure_withdrawn": Route(EVERYONE, {"pk": "erasure"}, does={"post": Action.GIVE_OWN_DATA}),
}
