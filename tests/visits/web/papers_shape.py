"""The agreed shape of the crush papers: our own contract with the page."""


def names(text):
    """Fields of which only the name is agreed."""
    return dict.fromkeys(text.split())


SHAPE = {
    **names("format fetched_at queue group_labels scale cursor is_watched"),
    "seat": names("user name business business_name"),
    "visit": names(
        "id uid reason reason_label state day planned_start planned_finish started_at finished_at "
        "head_count note zone done_by"
    ),
    "farm": {
        **names("id name address access_notes phone latitude longitude set_up"),
        **names("hygiene_level hygiene_label hygiene_reason wash_rule"),
        "contacts": [names("name part phone")],
    },
    "cautions": names(
        "before alone belly_band blood grinder glue medicines health toe late_pregnant for_the_farm "
        "blade_broken disc_broken"
    ),
    "cows": [
        {
            **names("id number status note calving_due dry_off_due why is_lame"),
            "ids": [names("kind label value")],
            "blocks": [names("foot claw kind put_on off_due")],
            "rechecks": [names("foot what due_from due_until cause")],
            "last": [names("day kind_label score scale found done for_vet")],
        }
    ],
    "lesions": [names("code name group meaning zones alarm on_skin parent")],
    "zones": names("map names skin"),
    "stages": [names("code name active")],
    "scales": [names("id label scores lame_from very_lame_from")],
    "labels": names("actions blocks feet claws signs"),
    "figures": {
        "trim": names(
            "shortest_wall_mm wall_measured_from toe_angle_from toe_angle_to belly_band_minutes feet_lifted"
        ),
        "rechecks": names("block lesion lame_trim"),
    },
    "blades": [
        names(
            "id name kind kind_label is_turned hand hand_label cows_on_edge edge_since is_dull is_in_hand may_cut "
            "counted_on"
        )
    ],
    "consumables": [
        {
            **names("id name kind unit in_van grams_per_ml active_substance dilution contact_minutes"),
            "uses": [names("per block_kind quantity")],
        }
    ],
    "written": [
        names(
            "uid kind record after made_at not_before is_gone content placed_at by phone shows beside cow_id"
        )
    ],
}


def same_shape(told, shape, path="papers"):
    """Whether every name agreed is there and no other; a list must hold something, or nothing was seen."""
    if isinstance(shape, dict):
        assert sorted(told) == sorted(shape), path
        for name, inner in shape.items():
            same_shape(told[name], inner, f"{path}.{name}")
    elif isinstance(shape, list):
        assert told, f"{path} is empty: the test does not see its shape"
        for item in told:
            same_shape(item, shape[0], path)
