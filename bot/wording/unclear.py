"""Words for what may be several things, or cannot be: asked once, with what works and the taps for it."""

import re
from collections.abc import Callable, Sequence
from typing import Any

from bot.intents.intents import MoveDeadline, Unclear
from bot.wording import asking, language, numbers, options, refusals, taken
from core.person import Person


def say(intent: Unclear, person: Person) -> tuple[str, asking.Rows]:
    """What was typed and could not be taken, with what works."""
    rows = taps(intent.options[:4], person)
    if intent.why in _CANNOT_BE:
        return _CANNOT_BE[intent.why](intent.text), rows
    if intent.why in ("unit", "number") and not rows and re.search(r"%|salt|cure|percent", intent.text):
        return refusals.no_strength(intent.text), rows
    if intent.why == "word" and _is_a_day(intent):
        return language.say(
            "What is on «{typed}»: the meal, or a step? Tap the meal, or say what it is, like «remind me tomorrow».",
            typed=intent.text,
        ), rows
    texts = _texts(intent.text, person)
    return texts.get(intent.why, texts["likely"]), rows


def _is_a_day(intent: Unclear) -> bool:
    """Whether a day was said and no more: nothing is offered but the meal on it."""
    return len(intent.options) == 1 and isinstance(intent.options[0], MoveDeadline)


def nothing_to_mend() -> str:
    """A correction of a reading that nobody has sent in the last hours."""
    return language.say(
        "I find no reading of the last hours that this puts right, so nothing is changed.\n"
        "Tap it if that is what it reads now, or say it whole, with its place, like «fridge 38 f» or «core 158»."
    )


def which_size() -> str:
    """A unit put right, where it is not known which number it belongs to."""
    return language.say("Which number is that about? Type it with its unit, like 3.2 kg or 48 mm.")


def so_already(value: float, unit: str) -> str:
    """A unit put right that is the one which was noted."""
    return language.say(
        "It is noted as {size} already, so nothing is changed. If that is not right, type it whole, like «it weighs 3.1 kg».",
        size=f"{numbers.plain(value)} {unit}",
    )


def taps(offered: Sequence[Any], person: Person) -> asking.Rows:
    """A tap for each of the things that may be meant."""
    return tuple((asking.button(options.label(o, person), o),) for o in offered)


def _texts(typed: str, person: Person) -> dict[str, str]:
    degree = "158/245" if person.units.temperature == "f" else "70/120"
    core, pit = ("158 f", "245 f") if person.units.temperature == "f" else ("70 c", "120 c")
    return {
        "likely": language.say(
            "I am not sure I got «{typed}» right, so nothing is noted yet. Tap what it was, or say it in other words.",
            typed=typed,
        ),
        "brine": asking.brine(typed),
        "number": language.say(
            "What is «{typed}»? Say what it was, like «core {split}», «fridge 3 c» or «pit {split2}».",
            typed=typed,
            split=degree.split("/")[0],
            split2=degree.split("/")[1],
        ),
        "too_long": language.say(
            "That is more than I can take in at once. Say it in one short line, like «core 158» or «what now»."
        ),
        "empty": language.say("I got nothing to read there. Type it in words, like «flipped» or «what now»."),
        "unit": language.say(
            "In which unit is {typed}? Type it with its unit, like 3.2 kg, 48 mm or 70 c.", typed=typed
        ),
        "at": language.say(
            "«{typed}»: is that the hour, or what it read? Tap it, or type it like «brine 3 c».", typed=typed
        ),
        "ahead": language.say(
            "«{typed}»: that hour is still to come today. When was it? Tap it, or type the hour anew.", typed=typed
        ),
        "share": language.say(
            "{typed} of what? Tap it if it is that; else say it with its word, like «cure is 6.25 %» or «salt 2.25 %».",
            typed=typed,
        ),
        "pair": language.say(
            "Which is which in «{typed}»? Tap it, or type each by its name, like «core {core} pit {pit}».",
            typed=typed,
            core=core,
            pit=pit,
        ),
        "other": language.say("I cannot read that. Type it in words, like «flipped» or «core 158»."),
    }


def _no_hour(typed: str) -> str:
    return language.say("There is no {typed} on the clock. Type the hour like 8:00 or 20:00, or 8 pm.", typed=typed)


def _remark(why: str) -> Callable[[str], str]:
    """The question that a short remark is met with."""
    return lambda typed: language.say(_REMARKS[why], typed=typed)


_REMARKS = {
    "in_the_fridge": language.later(
        "If the meat is in its brine, tap it. The brine alone is right: it cools, and is read before the meat goes in."
    ),
    "until": language.later("Until when? Type the hour, like «remind me at 18:00», and I call you then."),
    "half_hour": language.later(
        "«{typed}» is half an hour before to some, and half past to others. Tap which, or type it like 7:30."
    ),
    "out": language.later("Is the fire out, or is the meat off? Tap it: a fire that is out counts from now."),
    "off": language.later(
        "Off the fire, or does something smell off? Tap it; what smells sour or rotten is thrown away."
    ),
    "forgot": language.later(
        "What was forgotten: a step, or the curing salt? Tap it, or say it, like «forgot the flip»."
    ),
    "smell": language.later(
        "How does it smell: of spice and smoke, or sour, rotten, like eggs?\nSour, rotten or like eggs: throw it away. "
        "A clean smell proves nothing either; «is it safe» asks the record."
    ),
    "spoiled": language.later(
        "Throw it away, all of it, and do not taste it: sour, rotten, like eggs or ammonia, slime or fuzz say that it went off.\n"
        "No rinsing, salt or heat brings it back. Wash your hands, the shelf and what it touched."
    ),
    "look": language.later(
        "Where is it: outside, or in the middle of a slice? Raw or cooked?\nSay it like «grey 6 mm in the middle of 44»; "
        "slime or green is thrown away."
    ),
    "late": language.later(
        "What is late: the meat, the meal, or you? Say it like «dinner at 19:00», «core 158» or «later»."
    ),
    "enough": language.later("Enough of what: cure, days, charcoal, or meat for the guests? Ask it with its word."),
    "again": language.later(
        "Again what? A new piece begins with its weight, like «3.2 kg flat»; a step or a number is said anew, like «flipped»."
    ),
    "which": language.later("Which one is «{typed}»? Say it with its step or its piece, like «flipped» or «rinsed»."),
    "leave": language.later(
        "Leave what: this flip, or the meat where it is for longer? One missed flip does no harm.\n"
        "For longer, say by how many days; beside the fire or in the warm nothing is left."
    ),
    "moved": language.later("What moved, and to where? Say it with its number, like «pit 245» or «core 158»."),
    "cured": language.later(
        "What is cured already gets no cure from me: another dose would come on top of it. I plan raw meat.\n"
        "Ask «pastrami from bought corned beef» for how to soak and smoke it."
    ),
    "thickest": language.later(
        "Which is it at the thickest spot? The cure has to reach the middle there. Tap it, or type it like 48 mm or 1.9 in."
    ),
    "grams": language.later(
        "How many grams of curing salt went in? I do not guess a dose. Type it like «put in 12 g of curing salt»."
    ),
    "odd": language.later(
        "What is odd about it: how it smells, looks or feels? Sour, rotten, slimy, green or furry: throw it away.\n"
        "Else say it in words, like «grey outside» or «fridge 38 f»."
    ),
    "ready": language.later(
        "Ready for what: a step that is done, or the meat to come off? Tap it, or say it, like «flipped» or «core 203 f»."
    ),
    "halved": language.later(
        "How thick is the thickest of the pieces now? Type it, like 40 mm or 1.6 in: it sets the days anew.\n"
        "The dose stays as long as all of them lie in it."
    ),
    "meal_off": language.later(
        "Is the whole batch to be dropped, or only the date of the meal? Tap it, or type a new day; nothing is changed yet."
    ),
    "watch": language.later(
        "I read no thermometer: I know only what you type, so I cannot watch it for you.\n"
        "Type a reading, like «pit 245 f», and I say what to do. «quiet» keeps all but the fire and the chill still."
    ),
    "more": language.later(
        "More of what: days, charcoal, salt in the next one, or meat for the guests? Ask it with its word.\n"
        "Curing salt is never added on a guess."
    ),
    "more_in": language.later(
        "Do you ask whether it needs more, or did more go in?\nAsk it like «how salty will it be»; what went in is told "
        "with its weight, like «put in 12 g of curing salt».\nCuring salt is never added on a guess."
    ),
    "is_ok": language.later(
        "Ok in which way: is it safe to eat, does it look or smell right, or is the hour all right? Tap it, or ask it with its word."
    ),
    "added": language.later(
        "Another piece takes its own dose: put it into a bag of its own, and start it with its weight, like «start 3 lb flat».\n"
        "In the same brine the dose of both would be wrong."
    ),
    "took_out": language.later(
        "Out of the cure for good, or only out of the fridge for a moment? For good is early: tap it then.\n"
        "If it goes back in, nothing is noted; out of the cold it may be for 2 h in all."
    ),
    "off_early": language.later(
        "Off the fire for good, or only for a moment? For good is early: tap it then.\n"
        "If it goes back on, nothing is noted: keep the time off short, and read the core once it is on again."
    ),
    "out_of_ice": language.later(
        "Out of the ice, or out of the fridge? Into the fridge, bare on a rack or in foil: tap how it lies there.\n"
        "Out in the warm it is not chilled: back into the cold with it, until the middle is at 4 °C (40 °F)."
    ),
    "out_to_eat": language.later(
        "Out of the fridge to slice it, or to eat it? Tap it. Out of the cold it may be for 2 h in all."
    ),
    "pink": language.later(
        "Cured meat stays pink however long it cooks, so the colour tells nothing. What does the coldest spot read?\nType it like «core 71 c»."
    ),
    "other_salt": language.later(
        "Which salt is it: a curing salt with its percent, or plain salt? The dose hangs on it, so nothing is noted.\n"
        "Type it like «cure is 6.25 %», or «used table salt as cure»."
    ),
    "forgot_extra": language.later(
        "No harm: sugar and spice carry neither the cure nor the safety. Stir it in now, dissolved in a little of the liquid, or leave it out."
    ),
    "put_in": language.later(
        "What went in, and where: onto the fire, into the ice, or into the fridge?\nSay it like «meat is on», «in the ice bath» or «in the fridge»."
    ),
    "other_weight": language.later(
        "«{typed}»: the weight that you deny is not the one that I have, so nothing is changed yet. Tap it if that is what it weighs."
    ),
    "which_hour": language.later(
        "At what hour was it on that day? Type both, like «in the bag since thursday 20:00»: hours and days are counted from it."
    ),
    "taken_back": language.later(
        "«{typed}»: shall I take back what was noted of it? Hours are counted from that, so tap it, or say what is so."
    ),
    "extra_left_out": language.later(
        "All right: that is no step of the plan, so nothing changes, and no safety hangs on it."
    ),
    "chilled_on": language.later(
        "How does it lie in the fridge: bare on a rack, or in its bag or foil? Tap it, the hours of the chill hang on it.\n"
        "The middle is still read until it is at 4 °C (40 °F)."
    ),
    "fridge_days": language.later(
        "Of which days are those? Type each with its day and hour, like «fridge 3 c at 8:00».\n"
        "Or tap it, if the fridge stayed at 4 °C (40 °F) or below all that time."
    ),
    "eat_now": language.later(
        "Above 60 °C (140 °F) slice it and serve it now. Cooler than that: heat it through to 74 °C (165 °F), steaming, first.\n"
        "What is left goes into the ice or the fridge at once, and the chill is read on."
    ),
    "other_meat": language.later(
        "That is another meat, so nothing of it is noted here: start it by its weight, like «start 1 kg chicken».\n"
        "Birds to 74 °C (165 °F), and never where raw juice drips on the other."
    ),
    "fuelled": language.later(
        "Good. Give it ten minutes with the vents open, then read the pit and send it, like «pit 121 c»."
    ),
    "iced": language.later(
        "Good, that keeps the chill going: covered, and moved about now and then. Read the middle next, like «core 18 c»."
    ),
    "surface": language.later(
        "The outside is cold long before the middle, so nothing is noted. Read the middle at the thickest spot, like «core 18 c»."
    ),
    "tasted": language.later(
        "A taste does no harm, and the chill goes on: it is not sliced for good yet. Read the middle, like «core 18 c»."
    ),
    "froze": language.later(
        "Back into the fridge with it: what is frozen takes no cure, so those hours do not count.\n"
        "Frozen through, it thaws in the fridge first. Was it more than a few hours, add a day, like «one day longer»."
    ),
    "spiced": language.later(
        "Spice changes neither the dose nor the days, so there is nothing to note.\n"
        "More salt, curing salt or water does change it: say that with its weight, like «put in 12 g of curing salt»."
    ),
    "melted": language.later(
        "More ice at once, as much as covers it, and move it about: without ice the chill stands still.\n"
        "Read the middle in half an hour, like «core 18 c»."
    ),
    "freezer": language.later(
        "Read the middle first: until it is at 4 °C (40 °F) the chill counts on, in a freezer too. Type it like «core 5 c».\n"
        "Once it is cold and for keeping, say «froze all of it»."
    ),
    "step": language.later("«{typed}»: is it done, or do you ask when? Tap it, or say it in other words."),
    "reheated": language.later(
        "Then it is hot enough: serve it now. What is left goes back into the fridge within 2 h.\nTap it when it is eaten."
    ),
    "reheat": language.later(
        "Heated again, it is eaten from 74 °C (165 °F) in the middle: read it there, and heat it on until then."
    ),
    "guests": language.later("How many will eat in all? Ask «how much for 16 people», and I say what that takes."),
}
_CANNOT_BE = {
    **{why: _remark(why) for why in _REMARKS},
    "hour": _no_hour,
    "strength": refusals.odd_strength,
    "mass": lambda typed: taken.again("mass", typed),
    "thickness": lambda typed: taken.again("thickness", typed),
    "meat": asking.unknown_meat,
    "ruler": lambda typed: language.say(
        "«{typed}» is no measure that I can plan by. Hold a ruler to the thickest spot, and type it like 48 mm or 1.9 in.",
        typed=typed,
    ),
}
