"""Words for why it stays in the cure so long, and for what the trade's own rule would say beside our days."""

from datetime import timedelta
from math import ceil, isfinite

from bot.wording import doses, meats, numbers
from bot.wording.cited import cite
from bot.wording.language import Words, say
from core.batch.assess import Assessment
from core.batch.cured import LEFTOVERS, come_in, counts_as_cured
from core.cure.penetration import After
from core.cure.thumb import Thumb, thumb
from core.plan.anchors import LONGEST_CURE
from core.plan.recipe import product
from core.safety.record import CURED_FROM
from core.safety.storage import keeping

RULES = Words(
    {
        "inch": "7 days an inch",
        "faces": "a quarter of an inch a day from each face and two days more",
        "pound": "4 days a pound, from an old farm bulletin",
        "belly": "an old farm bulletin's for a belly of up to 10 lb",
        "loin": "an old farm bulletin's for a loin or a heavy belly",
    }
)


def whole(a: Assessment) -> str:
    """How long it stays in, with what the trade's rule and the rule of keeping would say to that."""
    return "\n".join(line for line in (doses.days(a), beside(a), keeps_shorter(a)) if line)


def beside(a: Assessment) -> str:
    """The trade's rule where it waits longer than we do, so that a careful cook can choose; else nothing."""
    rule = _rule(a)
    if rule is None or a.plan is None or "out" in a.batch.done or rule.days <= numbers.half_up(a.plan.cure_days):
        return ""
    return say(
        "The trade's rule, {rule}, would be {days}: it waits for even salt, I wait for a pink middle. "
        "Kept cold, longer does no harm, up to {longest} days: type it, like «{example}».",
        rule=RULES[rule.by],
        days=numbers.days(rule.days),
        longest=numbers.plain(LONGEST_CURE),
        example=say("leave it in for {days} days", days=min(ceil(rule.days), int(LONGEST_CURE))),
    )


def keeps_shorter(a: Assessment) -> str:
    """Where the product would keep longer, were the middle cured by the rule: what that would take; else nothing."""
    made = product(a.batch.setup.product)
    of_cured, shorter = keeping(made.storage).days, keeping(LEFTOVERS).days
    if a.plan is None or a.cure is None or a.dose is None or "out" in a.batch.done or of_cured <= shorter:
        return ""
    if not counts_as_cured(a.dose) or come_in(a.cure, a.plan.cure_days) >= CURED_FROM:
        return ""
    days = ceil(a.cure.cured_days * 2.0) / 2.0 if isfinite(a.cure.cured_days) else LONGEST_CURE + 1.0
    kept = {"shorter": numbers.plain(shorter), "cured": numbers.plain(of_cured), "least": numbers.ppm(CURED_FROM)}
    if days > LONGEST_CURE:
        return say(
            "Cooked it keeps {shorter} days, like any roast: for the {cured} of cured meat the middle would have to "
            "hold {least}, which this cure does not reach in {longest} days.",
            longest=numbers.plain(LONGEST_CURE),
            **kept,
        )
    return say(
        "Cooked it keeps {shorter} days, like any roast: for the {cured} of cured meat the middle has to hold {least}, "
        "which takes {days} in the cure.",
        days=numbers.days(days),
        **kept,
    )


def why(a: Assessment) -> str:
    """Why it stays in so long, by the sum and beside the trade's rule, with the sources; nothing where there is no plan."""
    if a.plan is not None and meats.plain(a):
        return doses.days(a)
    after = a.after_cure()
    if a.cure is None or a.plan is None or after is None:
        return ""
    said = _injected(a, after) if a.batch.setup.method == "inject" else _from_outside(a, after)
    rule = _rule(a)
    sources = (*a.cure.sources, *(() if rule is None else (rule.source,)))
    return "\n".join(
        part for part in (f"{said}{doses.learned(a)}", _by_the_rule(a, rule, after), cite(sources)) if part
    )


def _from_outside(a: Assessment, after: After) -> str:
    if a.cure is None or a.plan is None:
        return ""
    return say(
        "{cure_days}, for {thickness} thick, {measured}, at {fridge}.\n"
        "Salt and nitrite creep in from the faces, and twice the thickness takes four times as long. "
        "The middle turns pink from {pink_from} mg/kg; half of such pieces are there after {p50}, "
        "nine in ten after {p90}. After {cure_days} nine in ten middles hold at least {p10} mg/kg nitrite. "
        "Pink in the middle on the day it comes out: {chance}; one more day: {one_more}.",
        cure_days=numbers.days(a.plan.cure_days),
        thickness=numbers.length(a.piece.thickness, a.person),
        measured=say("as you measured") if a.piece.measured else say("as I guess from the weight"),
        fridge=numbers.temperature(a.batch.setup.fridge_c, a.person),
        pink_from=f"{a.piece.cut.pink_from:.0f}",
        p50=numbers.days(a.cure.days_p50),
        p90=numbers.days(a.cure.days_p90),
        p10=f"{after.nitrite_centre.p10:.0f}",
        chance=numbers.chance(after.probability_pink),
        one_more=numbers.chance(a.cure.after(a.plan.cure_days + 1).probability_pink),
    )


def _injected(a: Assessment, after: After) -> str:
    """The needles do the way in; the days are those that the trade leaves it for colour and salt."""
    return say(
        "{cure_days}: it is injected, so the days are for colour and salt, as long as the trade leaves it.\n"
        "Needles 25 mm apart leave little way to go, however thick it is: the middle is reached within a day. "
        "After {cure_days} nine in ten middles hold at least {p10} mg/kg nitrite, and it turns pink from {pink_from}.",
        cure_days=numbers.days(after.days),
        p10=f"{after.nitrite_centre.p10:.0f}",
        pink_from=f"{a.piece.cut.pink_from:.0f}",
    )


def _by_the_rule(a: Assessment, rule: Thumb | None, after: After) -> str:
    """What the rule's days would make of the salt, and how far our own days are to be trusted."""
    if rule is None or a.cure is None:
        return ""
    then = a.cure.after(min(rule.days, LONGEST_CURE))
    return say(
        "The trade's rule, {rule}, would be {days}. It aims at even salt: {centre} in the middle and {mean} on average "
        "after {then}, where {ours} leave {centre2} and {mean2}.\n"
        "Mine are a sum that was tuned on one case: the longer of the two is the careful choice, "
        "and no rule of safety counts on the shorter.",
        rule=RULES[rule.by],
        days=numbers.days(rule.days),
        centre=numbers.percent(then.salt_centre.p50),
        mean=numbers.percent(then.salt_mean.p50),
        then=numbers.days(then.days),
        ours=numbers.days(after.days),
        centre2=numbers.percent(after.salt_centre.p50),
        mean2=numbers.percent(after.salt_mean.p50),
    )


def _rule(a: Assessment) -> Thumb | None:
    return None if a.cure is None else thumb(a.cure.immersion)


def too_long(a: Assessment) -> str:
    """Of meat that lies in its cure: that the plan keeps it there for longer than is planned for anybody; else nothing."""
    into = a.batch.done.get("into_cure")
    if into is None or a.plan is None or a.plan.cure_days <= LONGEST_CURE:
        return ""
    return say(
        "That is too long: {longest} days in the cure are the most that I plan. Take it out by {by}, and cook it or freeze it; "
        "or have the meal sooner.",
        longest=numbers.plain(LONGEST_CURE),
        by=numbers.day(into + timedelta(days=LONGEST_CURE), a.person),
    )
