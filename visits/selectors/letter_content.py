"""A cow that is the vet's, as the values her letter is drawn from."""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime

from farms.domain.identity_kind import IdentityKind
from farms.models import Calving, Contact, Cow
from trimops.kernel.clock import local_day
from trimops.kernel.scope import Scope
from trimops.paper.days import clock, day_short_year
from visits.documents.referral_letter_content import (
    Earlier,
    Known,
    LetterFoot,
    LetterPhoto,
    ReferralLetterContent,
)
from visits.documents.visit_report_cow_words import found_words
from visits.domain.actions import FUNCTIONAL_STEPS, ActionKind
from visits.domain.crush_catalogue import SIGN_LABELS
from visits.domain.feet import Foot
from visits.domain.mobility import MobilityScale
from visits.models import AskedCow, MobilityScore, Referral, Trim, TrimmedFoot, TrimPhoto, Visit
from visits.selectors.letterhead import letterhead_of
from visits.selectors.report_cows import block_on, done_on, found_on
from visits.selectors.visit_story import trims_with_feet

MOST_PHOTOS, MOST_EARLIER = 3, 3
STOPPED = "work on this foot stopped"


@dataclass(frozen=True)
class SeenAtCrush:
    """What of a letter comes from the visit itself; its feet are without what was seen earlier."""

    whole_cow: tuple[str, ...]
    feet: tuple[LetterFoot, ...]
    told: tuple[str, ...]
    note: str
    photos: tuple[LetterPhoto, ...]
    photos_left_out: int


def letter_content(trim: Trim, made_at: datetime) -> ReferralLetterContent:
    """Everything that the vet is told of the cow, with times in the business's zone."""
    scope, visit = trim.scope, trim.visit
    trim = trims_with_feet(scope).get(pk=trim.pk)
    zone, day = visit.business.zone, local_day(trim.recorded_at, visit.business.zone)
    seen = _seen_at(trim, visit, _photos_of(scope, [trim])[trim.pk])
    earlier = _earlier(trim, {foot.foot.value for foot in seen.feet})
    return ReferralLetterContent(
        letterhead=letterhead_of(visit.business),
        farm_name=visit.farm.name,
        cow=trim.cow.number,
        visit_day=day,
        made_at=made_at.astimezone(zone),
        trimmer=str(trim.recorded_by),
        addressed_to=_vet_of(visit),
        reference=f"no. {visit.pk}-{trim.pk}",
        of_cow=tuple(_of_cow(trim.cow, day)),
        of_farm=tuple(_of_farm(visit)),
        walked=tuple(_walked(trim, day)),
        whole_cow=seen.whole_cow,
        feet=tuple(replace(foot, earlier=tuple(earlier[foot.foot][:MOST_EARLIER])) for foot in seen.feet),
        told=seen.told,
        note=seen.note,
        photos=seen.photos,
        photos_left_out=seen.photos_left_out,
    )


def as_seen_now(
    scope: Scope, visit: Visit, written: Mapping[int, ReferralLetterContent]
) -> dict[int, ReferralLetterContent]:
    """Letters by their trims' ids with what was seen and done at the crush, who was told and the photos as they stand
    now; what lies round it (her history, an address) is left as written. A fixed number of queries."""
    trims = trims_with_feet(scope).filter(pk__in=written)
    photos = _photos_of(scope, trims)
    return {trim.pk: _renewed(written[trim.pk], _seen_at(trim, visit, photos[trim.pk])) for trim in trims}


def _renewed(letter: ReferralLetterContent, seen: SeenAtCrush) -> ReferralLetterContent:
    earlier = {foot.foot: foot.earlier for foot in letter.feet}
    return replace(
        letter,
        whole_cow=seen.whole_cow,
        feet=tuple(replace(foot, earlier=earlier.get(foot.foot, ())) for foot in seen.feet),
        told=seen.told,
        note=seen.note,
        photos=seen.photos,
        photos_left_out=seen.photos_left_out,
    )


def _seen_at(trim: Trim, visit: Visit, photos: Sequence[TrimPhoto]) -> SeenAtCrush:
    """Of a trim with its feet and referrals at hand."""
    zone = visit.business.zone
    referrals = sorted(trim.referrals.all(), key=lambda row: row.pk)
    feet = {row.foot for row in referrals if row.foot}
    # The photos of those feet, and those of no foot in particular; all of hers where it is no one foot.
    shown = [photo for photo in photos if not feet or photo.foot in ("", *feet)]
    return SeenAtCrush(
        whole_cow=_why(referrals, ""),
        feet=tuple(_feet(trim, referrals, feet)),
        told=tuple(_told(referrals, visit)),
        note=trim.note,
        photos=tuple(
            LetterPhoto(str(p.uid), p.sha256, p.taken_at.astimezone(zone), Foot(p.foot) if p.foot else None)
            for p in shown[:MOST_PHOTOS]
        ),
        photos_left_out=max(0, len(shown) - MOST_PHOTOS),
    )


def pictures_of(trim: Trim, letter: ReferralLetterContent) -> dict[str, bytes]:
    """The bytes of the letter's photos by their ids."""
    rows = TrimPhoto.objects.within(trim.scope).filter(trim=trim, uid__in=[p.uid for p in letter.photos])
    return {str(uid): bytes(picture) for uid, picture in rows.values_list("uid", "picture")}


def _vet_of(visit: Visit) -> str:
    """The vet among the farm's contacts, if the farm has told one."""
    rows = Contact.objects.within(visit.scope).filter(farm_id=visit.farm_id, part__icontains="vet")
    vet = rows.order_by("pk").first()
    return vet.name if vet else "the vet of the farm"


def _of_cow(cow: Cow, day: date) -> Iterable[Known]:
    yield Known("Number", cow.number)
    for identity in cow.identities.within(cow.scope):
        kind = IdentityKind(identity.kind)
        if kind.is_unique_in_the_world:
            yield Known(kind.label, identity.value)
    if cow.born_on:
        yield Known("Born", day_short_year(cow.born_on))
    calving = Calving.objects.within(cow.scope).filter(cow=cow, calved_on__lte=day).last()
    calved = calving.calved_on if calving else cow.calved_on
    if calving and calving.lactation:
        yield Known("Lactation", str(calving.lactation))
    if calved and calved <= day:
        yield Known("Calved", f"{day_short_year(calved)}, {(day - calved).days} days before")
    if cow.calving_due and cow.calving_due > day:
        yield Known("Calving due", day_short_year(cow.calving_due))


def _of_farm(visit: Visit) -> Iterable[Known]:
    farm = visit.farm
    told = (
        ("Farm", farm.name),
        ("Address", ", ".join(farm.address.splitlines())),
        ("Phone", farm.phone),
        ("E-mail", farm.email),
    )
    return (Known(name, value) for name, value in told if value)


def _walked(trim: Trim, day: date) -> Iterable[str]:
    """Her score at the crush, the farm's own, and since when she is lame, each with its scale and day."""
    if trim.mobility_score is not None and trim.mobility_scale:
        yield f"Walked in at {trim.mobility_score} ({MobilityScale(trim.mobility_scale).label})."
    asked = AskedCow.objects.within(trim.scope).filter(visit_id=trim.visit_id, cow_id=trim.cow_id).first()
    if asked is not None:
        yield f"Asked for: {asked.why.rstrip('.')}."
        if asked.mobility_score is not None and asked.mobility_scale:
            yield f"The farm's score: {asked.mobility_score} ({MobilityScale(asked.mobility_scale).label})."
        if asked.lame_since:
            yield f"Lame since {day_short_year(asked.lame_since)}, as the farm tells it."
    scores = MobilityScore.objects.within(trim.scope).filter(cow_id=trim.cow_id, scoring__scored_on__lte=day)
    last = scores.select_related("scoring").order_by("-scoring__scored_on", "-pk").first()
    if last is not None:
        scale = MobilityScale(last.scoring.scale).label
        yield f"Scored {last.score} ({scale}) on {day_short_year(last.scoring.scored_on)}."


def _feet(trim: Trim, referrals: list[Referral], feet: set[str]) -> Iterable[LetterFoot]:
    for foot in trim.feet.all():
        if foot.foot in feet:
            yield LetterFoot(
                foot=Foot(foot.foot),
                why=_why(referrals, foot.foot),
                found=found_on(foot, for_vet=True),
                signs=tuple(words for name, words in SIGN_LABELS.items() if getattr(foot, name)),
                done=done_on(foot),
                not_done=_not_done(foot),
                block_on=block_on(foot.actions.all()),
            )


def _why(referrals: Iterable[Referral], foot: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(row.reason for row in referrals if row.foot == foot))


def _not_done(foot: TrimmedFoot) -> tuple[str, ...]:
    """What the vet might take for done."""
    kinds = {action.kind for action in foot.actions.all()}
    return (
        *((STOPPED,) if foot.drew_blood or foot.sensitive_tissue else ()),
        *(() if kinds & FUNCTIONAL_STEPS else ("not trimmed",)),
        *(() if ActionKind.BLOCK in kinds else ("no block put on",)),
    )


def _earlier(trim: Trim, feet: set[str]) -> dict[str, list[Earlier]]:
    """What was seen on those feet before, newest first."""
    zone = trim.visit.business.zone
    earlier: dict[str, list[Earlier]] = defaultdict(list)
    rows = trims_with_feet(trim.scope).filter(cow_id=trim.cow_id, recorded_at__lt=trim.recorded_at)
    for before in rows.newest_first():
        day = local_day(before.recorded_at, zone)
        for foot in before.feet.all():
            said = [f"{found.lesion}{found.rest}" for found in map(found_words, found_on(foot))]
            if foot.foot in feet and said:
                earlier[foot.foot].append(Earlier(day, "; ".join(said)))
    return earlier


def _told(referrals: Iterable[Referral], visit: Visit) -> Iterable[str]:
    for row in referrals:
        if row.told_whom:
            at = row.told_at.astimezone(visit.business.zone) if row.told_at else None
            when = f" on {day_short_year(at.date())}, {clock(at)}" if at else ""
            yield f"{row.told_whom} was told{when}: {row.reason}."


def _photos_of(scope: Scope, trims: Iterable[Trim]) -> dict[int, list[TrimPhoto]]:
    """The photos of each of those trims, without their pictures."""
    photos: dict[int, list[TrimPhoto]] = defaultdict(list)
    rows = TrimPhoto.objects.within(scope).filter(trim_id__in=[trim.pk for trim in trims]).defer("picture")
    for row in rows:
        if row.trim_id is not None:
            photos[row.trim_id].append(row)
    return photos
