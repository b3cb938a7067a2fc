"""Words for what has gone in, weighed by the cook: what is wrong with it, and the way out."""

from dataclasses import replace
from typing import Any

from bot.intents.intents import Change as ChangeSetup
from bot.intents.intents import StepDone
from bot.reply import Button
from bot.wording import asking, cautions, doses, incidents, numbers, plans
from bot.wording.curing import NOT_OVER, VERDICTS
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.material import dose_of
from core.batch.weighed import most_in, planned_now
from core.cure.dose import Dose
from core.cure.judgement import POUR_OFF_WITHIN, Judgement, Verdict, judge
from core.errors import OverLimit
from core.plan.steps import Step
from core.safety.record import CURED_FROM
from core.units import Hours, Kilograms

OTHERWISE = 0.1  # of what was planned, and a gram: no scale and no spoon for the last pinch. Judgement
SALTIER = 0.005  # of meat and water: what a tongue notices, as in bot/conversation/curing.py. Judgement
A_GRAM = 0.001  # kg
A_TENTH = 0.0001  # kg, what a scale for curing salt shows: less cannot be added by it
WORTH_ADDING = 0.02  # of a dose; less no kitchen scale shows. Judgement


def judged(a: Assessment) -> str:
    """What is wrong with what went in, and what to do about it; empty where nothing is."""
    d = a.dose
    if d is None or d.limit is None or d.cure_kg <= 0.0 or a.batch.dosed is None:
        return ""
    into = a.batch.done.get("into_cure")
    lain = None if into is None else (a.now - into).total_seconds() / 3600.0
    most = judge(most_in(a.batch, d), lain)
    found = most if most.verdict not in NOT_OVER else judge(d, lain)
    if found.verdict is Verdict.WITHIN:
        return ""
    return f"{VERDICTS[found.verdict]}.\n{_mended(a, d, found, lain)}"


def told_wrong(a: Assessment) -> str:
    """The same, of a dose that the cook told: said again as the meat meets it; the dose of the plan is none."""
    return judged(a) if a.batch.put_in.get("put_in_cure") is not None else ""


def too_weak(a: Assessment) -> str:
    """That what was told as put in is no cure, however pink it makes the meat; "" where it is one, or is only planned."""
    d = a.dose
    told = a.batch.put_in.get("put_in_cure") is not None
    if not told or d is None or d.limit is None or d.nitrite_ingoing >= CURED_FROM:
        return ""
    return say(
        "Too weak to count as cured, however pink: {nitrite} nitrite went in, {floor} are the least. It cools and keeps by the uncured rules.",
        nitrite=numbers.ppm(d.nitrite_ingoing),
        floor=numbers.ppm(CURED_FROM),
    )


def beside_plan(a: Assessment) -> tuple[str, ...]:
    """What was planned, where what was told as put in is another dose; and how a brine still becomes the planned one."""
    d, told = a.dose, a.batch.put_in
    wanted = _planned(a, d)
    if d is None or wanted is None or _spooned(a):
        return ()
    pairs = ((d.cure_kg, wanted.cure_kg), (d.salt_kg, wanted.salt_kg), (d.sugar_kg, wanted.sugar_kg))
    of = ("put_in_cure", "put_in_salt", "put_in_sugar")
    if not any(told.get(name) and abs(a - b) > OTHERWISE * b + A_GRAM for name, (a, b) in zip(of, pairs, strict=True)):
        return (to_plan(a),)
    planned = say(
        "Planned were {cure} curing salt, {salt} salt and {sugar} sugar.",
        cure=numbers.grams(wanted.cure_kg),
        salt=numbers.grams(wanted.salt_kg),
        sugar=numbers.grams(wanted.sugar_kg),
    )
    return planned, to_plan(a)


def to_plan(a: Assessment) -> str:
    """What is missing to have a lawful mix as it was planned, while the meat is not in; "" where nothing is.

    Never more than the dose that the plan would weigh for this meat and water.
    """
    d = a.dose
    if _spooned(a) or "into_cure" in a.batch.done or "brine" not in a.batch.done:
        return ""
    wanted = _planned(a, d)
    if d is None or wanted is None:
        return ""
    cure, salt = wanted.cure_kg - d.cure_kg, wanted.salt_kg - d.salt_kg
    if judge(d, None).verdict is not Verdict.WITHIN or cure < WORTH_ADDING * wanted.cure_kg or salt < 0.0:
        return ""
    return say(
        "As it is it will do. To have it as planned, stir in {cure} of the same curing salt and {salt} salt before the meat goes in, no more.",
        cure=numbers.grams_down(cure),
        salt=numbers.grams_down(salt),
    )


def _mended(a: Assessment, d: Dose, found: Judgement, lain: Hours | None = None) -> str:
    """The way out: weighed anew while the meat is not in, topped up where it is too weak, poured off in time."""
    if found.verdict is Verdict.UNDER_FLOOR:
        too_little = found.top_up_cure_kg is None or found.top_up_cure_kg < A_TENTH
        if too_little or _spooned(a) or (lain is not None and lain > POUR_OFF_WITHIN):
            return cautions.WORDS["under_cured_floor"]
        if "into_cure" not in a.batch.done:
            more = say(
                "Stir in {more} more of the same salt before the meat goes in: that puts it right.",
                more=numbers.grams_down(found.top_up_cure_kg),
            )
        else:
            more = say(
                "Within a day of going in, {more} more of the same salt puts it right; later it keeps and cools by the stricter rules.",
                more=numbers.grams_down(found.top_up_cure_kg),
            )
        return "\n".join(line for line in (more, _salty(d, found.top_up_cure_kg, a)) if line)
    if "into_cure" not in a.batch.done:
        return say("The meat is not in it yet: throw that mix away and weigh it anew, {planned}.", planned=_anew(a, d))
    if found.pour_off:
        return incidents.ADVICE["pour_off_no_more_cure"]
    return say("What has gone into the meat no rinse and no soak takes out for sure. Do not serve it on my word.")


def _salty(d: Dose, more: Kilograms, a: Assessment) -> str:
    """What the salt comes to with curing salt that is topped up, where that is much: a weak one is salt almost all of it."""
    then, planned = replace(d, cure_kg=d.cure_kg + more), _planned(a, d)
    if planned is None or min(then.salt_fraction - one.salt_fraction for one in (d, planned)) < SALTIER:
        return ""
    return say(
        "With it the salt comes to {salt}, instead of {planned}: soak it before it is smoked, ask «how long to soak».",
        salt=numbers.percent(then.salt_fraction),
        planned=numbers.percent(planned.salt_fraction),
    )


def _spooned(a: Assessment) -> bool:
    """Whether a spoon measured it: nobody knows how much is missing, and what its light end lacks its heavy one may hold."""
    return a.batch.put_in.get("put_in_cure_most") is not None


def _planned(a: Assessment, d: Dose | None) -> Dose | None:
    """What the plan would weigh for this meat and water; None without nitrite, or where the place forbids that dose."""
    if d is None or d.limit is None:
        return None
    try:
        return planned_now(a.batch, d.jurisdiction)
    except OverLimit:  # it was weighed by another law
        return None


def _anew(a: Assessment, d: Dose) -> str:
    """The curing salt of a mix that is weighed anew: as planned, or where the place allows less, the most that passes."""
    try:
        return numbers.grams(dose_of(a.batch.setup, d.jurisdiction).cure_kg)
    except OverLimit as over:
        return numbers.grams_down(over.passing_cure_kg or 0.0)


def by_another_law(a: Assessment) -> str:
    """What is in, where its owner told another place since: by whose law it was weighed, and what the other has of it."""
    d = a.dose
    if d is None or d.limit is None:
        return ""
    law, there = plans.LAWS[a.batch.setup.law], plans.LAWS[a.person.jurisdiction]
    lines = [say("It was weighed by the law of {law}, and what is in stays in.", law=law), doses.dose_in(a)]
    if d.jurisdiction != a.person.jurisdiction:
        lines.append(say("By the law of {there}, as I hold it, nothing allows nitrite in this product.", there=there))
    elif (found := judge(most_in(a.batch, d))).verdict not in NOT_OVER:
        lines.append(say("By the law of {there} that is too much: I do not call it safe there.", there=there))
        lines += [] if "into_cure" in a.batch.done else [_mended(a, d, found)]
    return "\n".join(lines)


def strong_taken(a: Assessment) -> str:
    """A brine was mixed of fish whose days are not to be had: it is taken for the strong one, whose dose is told."""
    return say(
        "I took it for the strong brine by the clock, 1 part of salt to 7 of water by weight. If yours is another, say it, like "
        "«15 % brine for 3 h».\n{dose}",
        dose="" if a.dose is None else doses.dose(a),
    ).strip()


def never_told(a: Assessment) -> tuple[str, asking.Rows]:
    """The cure was weighed before its dose was told here: nobody knows what went in, unless it was what is planned."""
    text = "\n".join((say("It was weighed before I had told a dose."), unknown()))
    if a.dose is None:
        return text, ()
    planned = round(a.dose.cure_kg, 4)  # what is shown is what is kept
    as_planned = say("It was {cure}", cure=numbers.grams(planned))
    return text, ((asking.button(as_planned, ChangeSetup({"put_in_cure": planned}, a.batch.id)),),)


def of_cure_unsaid(a: Assessment, changes: dict[str, Any]) -> tuple[str, asking.Rows]:
    """Salt went in and of the curing salt nothing was told: nobody knows that it is in, unless it was what is planned."""
    if changes.get("put_in_cure", "") is not None:
        return "", ()
    if a.dose is None:
        return unknown(), ()
    planned = round(a.dose.cure_kg, 4)
    lead = say("You said nothing of the curing salt: {cure} were planned.", cure=numbers.grams(planned))
    as_planned = say("It was {cure}", cure=numbers.grams(planned))
    tap = asking.button(as_planned, ChangeSetup({"put_in_cure": planned}, a.batch.id))
    return f"{lead}\n{unknown()}", ((tap,),)


def by_spoon() -> str:
    """What a dose that a spoon measured counts for, and how it is told better."""
    return say(
        "A spoon is no scale: for the limit I count what so many level ones may weigh at the most, for the cure the least.\n"
        "Weigh as many of them and tell me, like «put in 12 g of curing salt», and I go by that."
    )


def unknown() -> str:
    """What a dose that nobody told means, and how it is told."""
    return say(
        "Until I know what went in, it counts as uncured and I cannot call it safe: say how much it was, like "
        "«put in 12 g of curing salt», and I judge it."
    )


def wet_or_dry(a: Assessment, step: Step) -> tuple[str, asking.Rows]:
    """A brine was made where a dry cure was planned, or the reverse: nothing is noted until it is said which it is."""
    if a.batch.setup.method != "dry":
        text = say(
            "The plan is a brine: what was weighed for that is too much for meat that is rubbed, so nothing is noted yet.\n"
            "Tap dry cure and I work out its dose; or tap that it lies in the brine. If the cure is on the meat already, tell me "
            "what you weighed, like «put in 12 g of curing salt»."
        )
        dry = asking.button(say("Dry cure"), ChangeSetup({"method": "dry"}, a.batch.id))
        return text, ((dry,), (asking.button(say("It lies in the brine"), StepDone(str(step.kind), batch=a.batch.id)),))
    text = say(
        "The plan is a dry cure: what was weighed for that is too little for a brine, so nothing is noted yet.\n"
        "Tap wet brine and I work out its dose, with the water that you say, like «3 l of water»; or tap that the dry cure is weighed."
    )
    wet = _wet(a)
    weighed = asking.button(say("The dry cure is weighed"), StepDone("brine", batch=a.batch.id))
    return text, ((wet,), (weighed,))


def no_water(a: Assessment) -> tuple[str, asking.Rows]:
    """Of a dry plan of which somebody says «brine»: its salt is meant for no water, and the brine is one tap away."""
    text = say(
        "The plan is dry: this salt goes on the meat, without water. Is it a brine? Tap it, and its dose and hours are worked out."
    )
    return text, ((_wet(a),),)


def planned_dry() -> str:
    """Of plain salt that is noted as in the cure while somebody says «brine»: the plan has no water, and the way out."""
    return say(
        "The plan is dry: its salt and its hours are for no water. If it lies in a brine, «undo» takes this back; "
        "then type «wet brine», and say it again."
    )


def _wet(a: Assessment) -> Button:
    return asking.button(say("Wet brine"), ChangeSetup({"method": "brine"}, a.batch.id))
