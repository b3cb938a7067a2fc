"""Words for a wrong salt: forgotten, merely pink, with nitrate, used like table salt, rubbed on the outside."""

from dataclasses import replace
from datetime import timedelta

from bot.wording import cautions, numbers
from bot.wording.language import say
from core.batch.assess import Assessment
from core.cure.judgement import Judgement, Verdict, judge
from core.errors import Gone

TOLD = frozenset({"forgot_cure", "wrong_salt", "cure_as_salt", "cure_in_rub"})
IN_TIME = timedelta(hours=24)  # little has moved yet, in a fridge: the cure may still be put in. Common practice
SECOND_CURE_NITRATE = 0.04  # what salts for long cures usually hold; the packet decides. Common practice, no source


def told(a: Assessment, what: str) -> str:
    """What it means, what to do, and when to throw it away."""
    match what:
        case "cure_as_salt":
            return _as_salt(a)
        case "cure_in_rub":
            return _in_rub()
        case "wrong_salt" if _is_nitrate(a):
            return _nitrate(a)
        case _:
            return _no_cure(a, merely_pink=what == "wrong_salt")


def _is_nitrate(a: Assessment) -> bool:
    salts = [what.facts.get("salt") for _, what in a.batch.incidents if what.what == "wrong_salt"]
    return bool(salts) and salts[-1] == "nitrate"


def _no_cure(a: Assessment, *, merely_pink: bool) -> str:
    """No nitrite in it: early it can be made good, late it is uncured meat in salt."""
    lead = (
        say("Pink salt from a mine or the sea is only salt: there is no nitrite in it.")
        if merely_pink
        else say("No cure in it yet.")
    )
    into = a.batch.done.get("into_cure")
    late = into is not None and (a.now - into > IN_TIME or a.batch.setup.method == "inject")
    if into is None:
        return say(
            "{lead}\nThe meat is not in yet, so nothing is lost: make it as the plan says, with curing salt.", lead=lead
        )
    if late:
        return say(
            "{lead}\n{why_late}, so I count it as uncured from here.\n"
            "Cook it through within the days that raw meat keeps (3 to 5 in the fridge, birds 1 to 2); grey inside is no fault.\n"
            "{words} No cure on top now: nobody could tell the dose.",
            lead=lead,
            why_late=_why_late(a),
            words=cautions.WORDS["under_cured_floor"],
        )
    dose = a.dose
    grams = (
        say("{cure} of your curing salt", cure=numbers.grams(dose.cure_kg))
        if dose is not None and dose.cure_kg
        else say("the curing salt")
    )
    return say(
        "{lead}\nWithin a day it can be put right: {how}\n"
        "Then say «undo», and when it went in; the days count from then. If the fridge was not cold all the time, do not.",
        lead=lead,
        how=_how(a, grams),
    )


def _why_late(a: Assessment) -> str:
    return say("What is injected is in") if a.batch.setup.method == "inject" else say("It has lain for over a day")


def _how(a: Assessment, grams: str) -> str:
    """How the curing salt still gets in, by the way that it lies."""
    if a.batch.setup.method == "dry":
        return say("rub {grams} evenly onto the meat, back into its bag with all its juice, air out.", grams=grams)
    return say("take the meat out, stir {grams} into the same cure, cold, meat back in.", grams=grams)


def _nitrate(a: Assessment) -> str:
    """A salt for long cures: the nitrite is alike, the nitrate is judged."""
    found = _judged(a)
    if found is None:
        return say(
            "I cannot judge a cure with nitrate for this one.\nDo not eat it on my word; make a new cure with nitrite alone."
        )
    nitrate = numbers.ppm(found.ingoing.nitrate)
    lead = say(
        "That salt holds nitrate too: about {nitrate} of it, if the packet says {second_cure_nitrate} nitrate.",
        nitrate=nitrate,
        second_cure_nitrate=numbers.percent(SECOND_CURE_NITRATE, 0),
    )
    if found.verdict in (Verdict.CANNOT_CALL_SAFE, Verdict.THROW_AWAY):
        return say(
            "I cannot call it safe. {lead}\nThrow it away: over the limit, or in bacon, where none may be. Frying makes it worse.",
            lead=lead,
        )
    if found.verdict is Verdict.OVER_LIMIT:
        return say(
            "Over what {jurisdiction} allows here. {lead}\nDo not serve it on my word; start anew with nitrite alone.",
            jurisdiction=found.limit.jurisdiction,
            lead=lead,
        )
    return say(
        "{lead}\nThe nitrite is as planned, and that much nitrate is within the limit of 500 mg/kg ({jurisdiction}).\n"
        "Nitrate does nothing in a cure of days. Go on, do not give it to small children, and use nitrite alone next time.",
        lead=lead,
        jurisdiction=found.limit.jurisdiction,
    )


def _judged(a: Assessment) -> Judgement | None:
    if a.dose is None or a.dose.cure_kg <= 0.0:
        return None
    try:
        return judge(replace(a.dose, nitrate_fraction=SECOND_CURE_NITRATE))
    except Gone:
        return None


def _as_salt(a: Assessment) -> str:
    """All the salt was curing salt: judged by the sum, which a strong curing salt never passes."""
    dose = a.dose
    if dose is None:
        return say("I cannot call that safe: curing salt is no table salt. Throw it away, and do not taste it.")
    found = judge(replace(dose, cure_kg=dose.cure_kg + dose.salt_kg, salt_kg=0.0))
    amount = say("As much curing salt as that is {nitrite} nitrite", nitrite=numbers.ppm(found.ingoing.nitrite))
    if found.verdict in (Verdict.WITHIN, Verdict.UNDER_FLOOR):
        return say(
            "{amount}, within the limit: with a weak curing salt that is how it is done. Tell me the grams to be sure.",
            amount=amount,
        )
    return say(
        "Throw it away, and do not taste it.\n{amount}; the limit is {max}.\n{words}",
        amount=amount,
        max=numbers.ppm(found.limit.max_mg_kg),
        words=cautions.WORDS["poison_centre"],
    )


def _in_rub() -> str:
    """Cure on the outside before the fire: it is weighed by nobody and stays on the crust."""
    return say(
        "Wash it off now, under cold water, and rub it without curing salt.\nOn the outside it is a second dose that nobody weighed.\n"
        "If it has lain on for more than an hour or went on the fire, I cannot call it safe unless you weighed it: judge it by "
        "typing, like «12 g cure for 3.2 kg», with what is in it already added. Over 200 mg/kg: throw it away."
    )
