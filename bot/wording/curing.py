"""Words for the cure itself: a mix that is judged, what a day or a needle would buy, a soak, the law, poison."""

from math import ceil, floor, isfinite, isinf

from bot.intents.cures import Mixture
from bot.wording import cautions, meat_names, numbers, without_needle
from bot.wording.cited import cite
from bot.wording.language import Words, decimal, later, say
from core.batch.assess import Assessment
from core.cure.choices import Choices
from core.cure.dose import Dose
from core.cure.judgement import Judgement, Verdict
from core.cure.limits import Limit
from core.cure.penetration import Quantiles
from core.cure.soak import Soak
from core.person import Person
from core.sources import JUDGEMENT

METHODS = Words({"brine": "brine", "dry": "dry", "inject": "inject"})
VERDICTS = Words(
    {
        Verdict.UNDER_FLOOR: "Too weak to count as cured",
        Verdict.WITHIN: "Within the law",
        Verdict.OVER_LIMIT: "Over the legal limit",
        Verdict.CANNOT_CALL_SAFE: "Do not use that, and do not eat it: I cannot call it safe",
        Verdict.THROW_AWAY: "Throw that away, and do not taste it",
    }
)
NOT_OVER = (Verdict.WITHIN, Verdict.UNDER_FLOOR)


def poison() -> str:
    """Somebody ate curing salt: who to call comes before everything."""
    return say(
        "Call the emergency number or your local poison centre now, and have the packet at hand.\n"
        "Blue lips, dizziness, headache or trouble breathing after curing salt cannot wait. Do not make anybody vomit."
    )


def judged(mix: Mixture, found: tuple[Judgement, Judgement], instead: Dose | None, person: Person) -> str:
    """What a mix comes to, by its heavy end, the limit it is held to, and the dose that passes."""
    low, high = found
    base = say("meat and pickle") if mix.method == "brine" or mix.covered else say("green meat")
    limit = say(
        "the limit is {max} ({jurisdiction}, {where}{memory})",
        max=numbers.ppm(high.limit.max_mg_kg),
        jurisdiction=high.limit.jurisdiction,
        where=high.limit.where,
        memory=_memory(high.limit),
    )
    lines = [
        f"{VERDICTS[high.verdict]}.",
        say(
            "It comes to {span} nitrite of {base}; {limit}.",
            span=_comes_to(low, high),
            base=base,
            limit=limit,
        ),
    ]
    if mix.spoons is not None:
        weights = say("{cure} to {cure2}", cure=numbers.grams(mix.cure[0]), cure2=numbers.grams_up(mix.cure[1]))
        lines.append(
            say(
                "{spoons} level teaspoons weigh {weights}; a spoon is no scale, so I go by the heavy end.",
                spoons=numbers.plain(mix.spoons),
                weights=weights,
            )
        )
    if high.nitrite_by_pickup is not None and low.nitrite_by_pickup is not None:
        by_pickup = numbers.ppm_between(low.nitrite_by_pickup, high.nitrite_by_pickup)
        lines.append(say("By pick-up it would count as {span}; that is shown, not used.", span=by_pickup))
    lines += _what_to_do(mix, high, instead, person)
    return "\n".join([*lines, cite(tuple(dict.fromkeys(high.sources)))])


def _what_to_do(mix: Mixture, found: Judgement, instead: Dose | None, person: Person) -> list[str]:
    lines = []
    if found.verdict is Verdict.UNDER_FLOOR:
        lines.append(
            say(
                "A cure counts from {floor}; under it the meat cools and keeps by the stricter rules.",
                floor=numbers.ppm(found.floor),
            )
        )
    if found.pour_off:
        lines.append(
            say(
                "Caught within a day: pour it off, rinse the meat, and put no more curing salt on it. What it took stays in it, "
                "so it counts as uncured."
            )
        )
    elif instead is not None and found.verdict is not Verdict.WITHIN:
        water = say(" in {water} kg water", water=decimal(instead.water_kg, 2)) if instead.water_kg else ""
        lines.append(
            say(
                "What passes for {meat}{water}: {cure} of this curing salt, weighed, which is {nitrite_ingoing}.",
                meat=numbers.mass(mix.meat, person),
                water=water,
                cure=numbers.grams(instead.cure_kg),
                nitrite_ingoing=numbers.ppm(instead.nitrite_ingoing),
            )
        )
    return lines


def _comes_to(low: Judgement, high: Judgement) -> str:
    """What it comes to; with decimals where it is over a limit by less than it is rounded."""
    found, most = high.ingoing.nitrite, high.limit.max_mg_kg
    if found > most and round(found) == round(most):
        return f"{decimal(found, 2)} mg/kg"
    return numbers.ppm_between(low.ingoing.nitrite, found)


def _memory(limit: Limit) -> str:
    return say(", from memory") if limit.status == "MEMORY" else ""


def what_if(a: Assessment, found: Choices, about: str) -> str:
    """What one more day, a needle or a knife would buy, each computed; all of them where none was named."""
    said = {"day": _day(a, found), "inject": _inject(a, found), "split": _split(a, found), "pierce": say(PIERCED)}
    if about == "immerse":
        return without_needle.said(a)
    chosen = [said[about]] if about in said else [said["day"], said["inject"], said["split"]]
    return "\n".join([*chosen, cite((*a.cure.sources[:2], JUDGEMENT)) if a.cure else ""]).strip()


PIERCED = later(
    "Piercing alone buys no days: the holes close, so I give it no credit.\n"
    "And pierced meat is no longer intact: its core counts in the kill, and the clocks are stricter."
)


def _day(a: Assessment, found: Choices) -> str:
    now, then, days = found.now, found.one_more_day, a.plan.cure_days if a.plan else found.now.days
    return "\n".join(
        (
            say(
                "One more day, {days} in all. Pink in the middle: {pink}.",
                days=numbers.days(days + 1),
                pink=_instead(numbers.chance(now.probability_pink), numbers.chance(then.probability_pink)),
            ),
            say(
                "Salt in the middle {centre}, on average {mean}.",
                centre=_instead(numbers.percent(now.salt_centre.p50), numbers.percent(then.salt_centre.p50)),
                mean=_instead(numbers.percent(now.salt_mean.p50), numbers.percent(then.salt_mean.p50)),
            ),
        )
    )


def _instead(now: str, then: str) -> str:
    return say("{then} as before", then=then) if now == then else say("{then} instead of {now}", then=then, now=now)


def _inject(a: Assessment, found: Choices) -> str:
    if a.batch.setup.method == "inject":
        return say("It is injected already: the middle is reached within a day.")
    if found.injected is None:
        return say("This curing salt is too weak to inject: the pickle that carries the dose would not dissolve.")
    return say(
        "Injected: nine in ten middles are there by {days}.\n"
        "Then it is no longer intact: its core counts in the kill, and the clocks are stricter.",
        days=_instead(_by(a), numbers.days(found.injected.advice)),
    )


def _split(a: Assessment, found: Choices) -> str:
    half = numbers.length(a.piece.thickness / 2, a.person)
    if a.batch.setup.method == "inject":
        return say("Split to {half}: the needles reach the middle already, so it gains no day in the cure.", half=half)
    if isinf(found.halved.advice):
        return say("Split to {half}: the middle would still never be reached.", half=half)
    return say(
        "Split to {half} thick: nine in ten middles are there by {days}.",
        half=half,
        days=_instead(_by(a), numbers.days(found.halved.advice)),
    )


def _by(a: Assessment) -> str:
    return numbers.days(a.cure.advice) if a.cure is not None and isfinite(a.cure.advice) else say("never")


def soaked(a: Assessment, tries: tuple[tuple[float, Soak], ...]) -> str:
    """How long in fresh water for a little and for much less salt."""
    before = tries[0][1].salt_before
    lines = [
        say(
            "Soak it in the fridge, in 2 kg of ice-cold water for each kilo. Now it holds {about} salt on average.",
            about=_about(before),
        )
    ]
    lines += [_soak(wanted, found) for wanted, found in tries]
    lines.append(
        say("Then fry a thin slice and taste; a new hour, new water. Rest it a night, so that the salt evens out.")
    )
    return "\n".join(lines)


def _soak(wanted: float, found: Soak) -> str:
    goal = say("To {wanted}", wanted=numbers.percent(wanted, 1))
    if found.hours.p50 == 0:
        return say("{goal}: it is there already.", goal=goal)
    if isinf(found.hours.p50):
        return say(
            "{goal}: not within two days in one water; the least that this water brings it to is {salt_lowest}.",
            goal=goal,
            salt_lowest=numbers.percent(found.salt_lowest, 1),
        )
    late = f"{ceil(found.hours.p90)} h" if isfinite(found.hours.p90) else say("over two days")
    return say(
        "{goal}: about {p50} ({p10} h to {late}).",
        goal=goal,
        p50=numbers.hours(found.hours.p50),
        p10=f"{floor(found.hours.p10)}",
        late=late,
    )


def _about(q: Quantiles) -> str:
    return numbers.percent(q.p50, 1)


def law(a: Assessment | None, person: Person, found: tuple[Limit, ...]) -> str:
    """The limits of a product in each place, those of the person's own place first."""
    name = meat_names.product_name(a.batch.setup.product) if a is not None else say("Whole cuts of meat")
    method = "" if a is None else f", {METHODS[a.batch.setup.method]}"
    lines = [say("{name}{method}, the most nitrite that may go in (as sodium nitrite):", name=name, method=method)]
    ordered = sorted(found, key=lambda one: one.jurisdiction != person.jurisdiction)
    lines += [
        f"{one.jurisdiction}: {numbers.ppm(one.max_mg_kg)}{_also(one)}, {one.where}{_memory(one)}." for one in ordered
    ]
    lines.append(
        say(
            "The dose here is held to the first. Say where you are, like «i'm in Germany». Local rules come before mine."
        )
    )
    return "\n".join(lines)


def _also(one: Limit) -> str:
    if one.expressed_as == "NO2":
        return say(" ({printed} of the bare ion)", printed=f"{one.printed_mg_kg:.0f}")
    return say(", nitrate counted in") if "nitrate" in one.counts else ""


def salted_only() -> str:
    """Plain salt has no days of its own to win."""
    return say(
        "No nitrite goes in here, so neither a day nor a needle changes the colour. {words}",
        words=cautions.WORDS["under_cured_floor"],
    )
