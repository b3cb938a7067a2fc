"""Words for the cure itself: a mix that is judged, what a day or a needle would buy, a soak, the law, poison."""

from math import isfinite, isinf

from bot.intents.cures import Mixture
from bot.wording import cautions, meats, numbers
from bot.wording.answers import cite
from core.batch.assess import Assessment
from core.cure.choices import Choices
from core.cure.dose import Dose
from core.cure.judgement import Judgement, Verdict
from core.cure.limits import Limit
from core.cure.penetration import Quantiles
from core.cure.soak import Soak
from core.person import Person
from core.sources import JUDGEMENT

VERDICTS = {
    Verdict.UNDER_FLOOR: "Too weak to count as cured",
    Verdict.WITHIN: "Within the law",
    Verdict.OVER_LIMIT: "Over the legal limit",
    Verdict.CANNOT_CALL_SAFE: "Do not use that, and do not eat it: I cannot call it safe",
    Verdict.THROW_AWAY: "Throw that away, and do not taste it",
}
NOT_OVER = (Verdict.WITHIN, Verdict.UNDER_FLOOR)


def poison() -> str:
    """Somebody ate curing salt: who to call comes before everything."""
    return (
        "Call the emergency number or your local poison centre now, and have the packet at hand.\n"
        "Blue lips, dizziness, headache or trouble breathing after curing salt cannot wait. Do not make anybody vomit."
    )


def judged(mix: Mixture, found: tuple[Judgement, Judgement], instead: Dose | None, person: Person) -> str:
    """What a mix comes to, by its heavy end, the limit it is held to, and the dose that passes."""
    low, high = found
    base = "meat and pickle" if mix.water is not None else "green meat"
    limit = f"the limit is {numbers.ppm(high.limit.max_mg_kg)} ({high.limit.jurisdiction}, {high.limit.where}{_memory(high.limit)})"
    lines = [
        f"{VERDICTS[high.verdict]}.",
        f"It comes to {_span(low.ingoing.nitrite, high.ingoing.nitrite)} nitrite of {base}; {limit}.",
    ]
    if mix.spoons is not None:
        weights = f"{numbers.grams(mix.cure[0])} to {numbers.grams(mix.cure[1])}"
        lines.append(f"{mix.spoons:g} level teaspoons weigh {weights}; a spoon is no scale, so I go by the heavy end.")
    if high.nitrite_by_pickup is not None and low.nitrite_by_pickup is not None:
        span = _span(low.nitrite_by_pickup, high.nitrite_by_pickup)
        lines.append(f"By pick-up it would count as {span}; that is shown, not used.")
    lines += _what_to_do(mix, high, instead, person)
    return "\n".join([*lines, cite(tuple(dict.fromkeys(high.sources)))])


def _what_to_do(mix: Mixture, found: Judgement, instead: Dose | None, person: Person) -> list[str]:
    lines = []
    if found.verdict is Verdict.UNDER_FLOOR:
        lines.append(
            f"A cure counts from {numbers.ppm(found.floor)}; under it the meat cools and keeps by the stricter rules."
        )
    if found.pour_off:
        lines.append("Caught within a day: pour it off, rinse the meat, and make the brine anew.")
    if instead is not None and found.verdict is not Verdict.WITHIN:
        water = f" in {instead.water_kg:.2f} kg water" if instead.water_kg else ""
        lines.append(
            f"What passes for {numbers.mass(mix.meat, person)}{water}: {numbers.grams(instead.cure_kg)} of this curing salt, "
            f"weighed, which is {numbers.ppm(instead.nitrite_ingoing)}."
        )
    return lines


def _span(low: float, high: float) -> str:
    """«280 to 356 mg/kg», or one figure where both round to it."""
    return numbers.ppm(high) if round(low) == round(high) else f"{low:.0f} to {numbers.ppm(high)}"


def _memory(limit: Limit) -> str:
    return ", from memory" if limit.status == "MEMORY" else ""


def what_if(a: Assessment, found: Choices, about: str) -> str:
    """What one more day, a needle or a knife would buy, each computed; all of them where none was named."""
    said = {"day": _day(a, found), "inject": _inject(a, found), "split": _split(a, found), "pierce": PIERCED}
    chosen = [said[about]] if about in said else [said["day"], said["inject"], said["split"]]
    return "\n".join([*chosen, cite((*a.cure.sources[:2], JUDGEMENT)) if a.cure else ""]).strip()


PIERCED = (
    "Piercing alone buys no days: the holes close, so I give it no credit.\n"
    "And pierced meat is no longer intact: its core counts in the kill, and the clocks are shorter."
)


def _day(a: Assessment, found: Choices) -> str:
    now, then, days = found.now, found.one_more_day, a.plan.cure_days if a.plan else found.now.days
    return (
        f"One more day, {numbers.days(days + 1)} in all: {numbers.chance(then.probability_pink)} of such pieces pink in the middle, "
        f"instead of {numbers.chance(now.probability_pink)}.\n"
        f"Salt in the middle {numbers.percent(then.salt_centre.p50)} instead of {numbers.percent(now.salt_centre.p50)}, "
        f"on average {numbers.percent(then.salt_mean.p50)} instead of {numbers.percent(now.salt_mean.p50)}."
    )


def _inject(a: Assessment, found: Choices) -> str:
    if a.batch.setup.method == "inject":
        return "It is injected already: the middle is reached within a day."
    if found.injected is None:
        return "This curing salt is too weak to inject: the pickle that carries the dose would not dissolve."
    return (
        f"Injected: nine in ten middles are there by {numbers.days(found.injected.advice)}, instead of {_by(a)}.\n"
        "Then it is no longer intact: its core counts in the kill, and the clocks are shorter."
    )


def _split(a: Assessment, found: Choices) -> str:
    half = numbers.length(a.piece.thickness / 2, a.person)
    if isinf(found.halved.advice):
        return f"Split to {half}: the middle would still never be reached."
    return f"Split to {half} thick: nine in ten middles are there by {numbers.days(found.halved.advice)}, instead of {_by(a)}."


def _by(a: Assessment) -> str:
    return numbers.days(a.cure.advice) if a.cure is not None and isfinite(a.cure.advice) else "never"


def soaked(a: Assessment, tries: tuple[tuple[float, Soak], ...]) -> str:
    """How long in fresh water for a little and for much less salt."""
    before = tries[0][1].salt_before
    lines = [
        f"Soak it in the fridge, in 2 kg of ice-cold water for each kilo. Now it holds {_about(before)} salt on average."
    ]
    lines += [_soak(wanted, found) for wanted, found in tries]
    lines.append("Then fry a thin slice and taste; a new hour, new water. Rest it a night, so that the salt evens out.")
    return "\n".join(lines)


def _soak(wanted: float, found: Soak) -> str:
    goal = f"To {numbers.percent(wanted, 1)}"
    if found.hours.p50 == 0:
        return f"{goal}: it is there already."
    if isinf(found.hours.p50):
        return f"{goal}: not within two days in one water; the least that this water brings it to is {numbers.percent(found.salt_lowest, 1)}."
    late = f"{found.hours.p90:.0f} h" if isfinite(found.hours.p90) else "over two days"
    return f"{goal}: about {numbers.hours(found.hours.p50)} ({found.hours.p10:.0f} h to {late})."


def _about(q: Quantiles) -> str:
    return numbers.percent(q.p50, 1)


def law(a: Assessment | None, person: Person, found: tuple[Limit, ...]) -> str:
    """The limits of a product in each place, those of the person's own place first."""
    name = meats.product_name(a.batch.setup.product) if a is not None else "Whole cuts of meat"
    method = "" if a is None else f", {a.batch.setup.method}"
    lines = [f"{name}{method}, the most nitrite that may go in (as sodium nitrite):"]
    ordered = sorted(found, key=lambda one: one.jurisdiction != person.jurisdiction)
    lines += [
        f"{one.jurisdiction}: {numbers.ppm(one.max_mg_kg)}{_also(one)}, {one.where}{_memory(one)}." for one in ordered
    ]
    lines.append(
        "The dose here is held to the first. Say where you are, like «i'm in Germany». Local rules come before mine."
    )
    return "\n".join(lines)


def _also(one: Limit) -> str:
    if one.expressed_as == "NO2":
        return f" ({one.printed_mg_kg:.0f} of the bare ion)"
    return ", nitrate counted in" if "nitrate" in one.counts else ""


def salted_only() -> str:
    """Plain salt has no days of its own to win."""
    return f"No nitrite goes in here, so neither a day nor a needle changes the colour. {cautions.WORDS['under_cured_floor']}"
