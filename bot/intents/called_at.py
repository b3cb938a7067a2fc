"""At which hours somebody is called: quiet hours, flip hours, one of them moved, mornings or evenings only."""

from datetime import time
from typing import Final

from bot.intents.context import Context
from bot.intents.hours import clocks
from bot.intents.intents import Settings
from core import patterns as re

_QUIET: Final = re.compile(
    r"\b(?:quiet|silent|do not disturb|dnd|ruhe|ruhezeit|no (?:more )?(?:pings?|messages?|reminders?|texts?"
    r"|calls?|buzz(?:es)?|alerts?"
    r"|(?:flips?|flipping|turning) (?=(?:after|past|before) ))"
    r"|(?:dont|do not|stop|quit|no) (?:ping|text|messag|wak|remind|bug|writ|buzz|call)(?:e|ing|ging)?"
    r" (?=before|after|at night)"
    r"|nothing (?=(?:after|past|before) \d)|zip it|shut up|hush|shush|be quiet"
    r"|(?:dont|do not|stop|quit|no) (?:ping|text|messag|msg|wak|remind|bug|writ|disturb)(?:e|ing|ging)? me"
    r"|(?:dont|do not|stop) send(?:ing)? (?:me )?(?:anything|messages?|reminders?|any (?:messages?|reminders?)))\b"
)
_FLIPS: Final = re.compile(
    r"\bflips? (?:hours?|times?)?\b|\bflips\b|\bremind me to flip\b|\bflip (?:reminders?|once|twice)\b|\bwenden\b"
    r"|\b(?:remind|ping|call|nudge|message|text|tell|buzz) (?:me|us) (?:only )?(?:at|with|around) .{1,16} and "
    r"(?=(?:at |around |before |in the |with |again at |my |the )*(?:\d|noon|midnight|breakfast|coffee|lunch"
    r"|tea|dinner|supper"
    r"|bed|evening|morning))"
)
_SET_HOURS: Final = re.compile(r"\b(?:at|um|hours|times|once|twice|with)\b|\bflips (?:after|before|in|when)\b")
# habits instead of hours: when most people do it; common practice, no source
_HABITS: Final = {
    "breakfast": time(8), "coffee": time(8), "lunch": time(13), "tea": time(17), "dinner": time(19), "supper": time(19),
    "bedtime": time(21, 30), "bed": time(21, 30), "up": time(7, 30), "morning": time(8), "evening": time(20),
}  # fmt: skip
_MAY_I: Final = re.compile(
    r"\b(?:can|may|could|should|shall) (?:i|we) (?!get\b|have\b|set\b)"
)  # asked, and no hour is set
_NIGHT: Final = (time(22), time(7))
_SLEEPS: Final = re.compile(  # «we get up at 6», «i go to bed at 11», «i sleep from 10 to 6»: what is so every day
    r"^(?:(?:i|we|im|were|usually|always|normally|mostly|we are|i am) )+"
    r"(?:(?P<up>(?:get|wake) up)(?: (?:at|by|from|around|about))*"
    r"|(?P<bed>go to (?:bed|sleep)|in bed|turn in)(?: (?:at|by|from|around|about))*"
    r"|(?P<till>(?:asleep|sleep|in bed) (?:till?|until))|(?P<asleep>asleep|sleep)(?: from| between)?) ?(?=\d)"
    r"(?P<hours>[^a-z]*(?:[ap]m)?(?: (?:to|till?|until|and) [^a-z]+(?:[ap]m)?)?)"
    r"(?: (?:every day|usually|normally|most days))*$"
)
_CALL: Final = r"(?:remind|ping|buzz|call|nudge|message|text|tell|ring|wake|bug|nag|poke)(?:ing)?"
_AN_HOUR: Final = r"(?:\d{3,4}|\d{1,2}(?:[:.][0-5]\d)?) ?(?:[ap]m)?"
_AWAKE: Final = re.compile(  # «text me 7am to 9pm only»: the hours of the day, and the others are quiet
    rf"^(?:(?:please|pls|can you|only|just) )*(?:{_CALL} (?:me|us)|reminders?|pings?|messages?|texts?)"
    rf"(?: (?:only|just|between|from))* (?P<from>{_AN_HOUR}) ?(?:to|till?|until|-|and) ?(?P<to>{_AN_HOUR})"
    r"(?: (?:only|please|pls))*$"
)
_EITHER_SIDE: Final = re.compile(  # «no pings before 7 or after 10»
    r"\b(?P<first>before|after|past) .+\b(?!(?P=first))(?:before|after|past) "
)
_MOVED: Final = re.compile(
    rf"\b(?:{_CALL} (?:me|us)|reminders?|flips?)(?: (?:about it|to flip|up|always))*(?: at"
    rf"| from)? (?P<new>{_AN_HOUR}),?"
    rf" (?:and )?(?:not|instead of|rather than) (?:at )?(?P<old>{_AN_HOUR})(?: (?:please|pls|from now on))*$"
)
_SHIFTED: Final = re.compile(
    r"^(?:(?:please|can you|lets|can we) )*(?:move|shift|change|switch|put|make) (?:the |my |all )?flips? (?:to|at|for)"
    rf" (?P<new>{_AN_HOUR})(?: (?:please|pls|from now on|instead))*$"
)
_ONLY: Final = re.compile(
    rf"\b(?:{_CALL} (?:me|us)|reminders?|pings?|flips?)\b(?: to flip| only| just| in the| in)* (?P<when>morning"
    rf"|evening)s?\b"
)
_PART_AT: Final = re.compile(
    rf"\b(?P<part>morning|evening) (?:pings?|reminders?|calls?|messages?|buzz)(?: please)?(?: (?:at|to"
    rf"|is|be))+ (?P<new>{_AN_HOUR})\b"
    rf"|^(?:(?:please|can you|lets|can we|could you) )*(?:make|move|set|put|change|shift|have|want|can|could) "
    rf"(?:the |my |our )?(?P<half>morning|evening) (?:pings?|reminders?|calls?|messages?|buzz|flips?|turns?|one)"
    rf"(?: (?:at|to|is|be|for|come))* (?P<hour>{_AN_HOUR})\b(?! ?(?:min|h\b|hours?|deg))"
)
_EACH_PART: Final = re.compile(  # «flip at 10 every night»
    rf"^(?:(?:please|remind me to|ping me to|lets|ill|i|we|can we) )*(?:flip|turn)(?: (?:it|them|the bags?))?(?: at)? "
    rf"(?P<hour>{_AN_HOUR}) (?:every|each) (?P<half>morning|evening|night)$"
)
_NO_FLIPS: Final = re.compile(
    r"\b(?:no(?: more)?|stop|mute|drop|quit|without|skip|dont need|dont want|(?:turn|switch)(?:ed|ing)? off|disable"
    r"|cancel)(?: \w+){0,3}? (?:all )?(?:the "
    r"|these |your )?"
    r"(?:flip(?:s|ping)?|turn(?:s|ing)?) (?:reminders?|pings?|messages?|calls|texts|notifications|alerts)\b"
    r"|\b(?:mute|silence) (?:the |these )?(?:flips|turns)\b"
    r"|\b(?:stop|quit|dont|enough|no need to)(?: keep)? (?:remind|ping|tell|text|nag|bug|pester|bother"
    r"|messag|call|buzz|ask)\w* (?:me )?(?:about (?:the |every )?flip\w*|to (?:flip|turn))\b"
)
_GLUED: Final = re.compile(r"(\d{1,2})([0-5]\d)")
_EVENING_FROM: Final = 15
NOON: Final = 12
_BY_DAY: Final = re.compile(
    r"\b(?:sleep days|(?:night|late) ?shifts?|(?:after|on|work) nights|by day"
    r"|in the daytime|during the day)\b"
)
_AT_WORK: Final = re.compile(r"\b(?:work\w*|office|school|job)\b")  # «9-5» is by day
_ASKED: Final = re.compile(  # «clocks changed, are the flips still at 8»: asked, and nothing set
    r"(?:[^,;?]*[,;] |so |and |ok )?(?:are|is|do|does) (?:(?:the|my|our|i|we) )?"
    r"(?:flips?|calls?|reminders?|pings?|turns?|flipping|turning)\b(?: \w+){0,4} (?:at|still) "
)
_NEAR_H: Final = 1.0  # «not 8» means the reminder of 8:00, or one within the hour


def asks_when(text: str) -> bool:
    """Whether a plain text asks at what hours the flips are, and sets none."""
    return bool(_ASKED.match(text))


def read_called_at(text: str, context: Context) -> Settings | None:
    """The hours at which somebody wants to be called, or not, where a plain text sets them."""
    if asks_when(text):
        return None
    if _NO_FLIPS.search(text):
        return Settings({"flip_hours": ()})
    return (
        _shifted(text, context)
        or _moved(text, context)
        or _of_part(text, context)
        or _only(text, context)
        or _awake(text)
        or _quiet(text)
        or _sleeps(text, context)
        or _flip_hours(text, context)
    )


def _shifted(text: str, context: Context) -> Settings | None:
    """«move flips to 9»: those that lie nearest to it on a clock of twelve, each in its own half of the day."""
    found = _SHIFTED.match(text)
    new = clocks(found["new"]) if found else ()
    if found is None or not new or not context.flip_hours:
        return None
    least = min(_apart(hour, new[0]) for hour in context.flip_hours)
    near = [hour for hour in context.flip_hours if _apart(hour, new[0]) == least]
    if found["new"].endswith("m"):
        near, moved = near[:1], {new[0]}
    else:
        moved = {_in_half(new[0], late=hour.hour >= NOON) for hour in near}
    return Settings({"flip_hours": tuple(sorted({*context.flip_hours} - {*near} | moved))})


def _in_half(hour: time, *, late: bool) -> time:
    """An hour of the clock of twelve in that half of the day."""
    return hour if (hour.hour >= NOON) == late else hour.replace(hour=(hour.hour + NOON) % 24)


def _moved(text: str, context: Context) -> Settings | None:
    """«buzz me 630 not 8»: the reminder of that hour at another, in the same half of the day; the others stay."""
    found = _MOVED.search(text)
    new, old = (clocks(_GLUED.sub(r"\1:\2", found[name])) for name in ("new", "old")) if found else ((), ())
    if not (new and old):
        return None
    was = min(context.flip_hours, key=lambda hour: _apart(hour, old[0]), default=None)
    if was is None or _apart(was, old[0]) > _NEAR_H:
        return None
    said = found and found["new"].endswith("m")
    at = new[0] if said else _in_half(new[0], late=was.hour >= NOON)
    return Settings({"flip_hours": tuple(sorted({*context.flip_hours, at} - ({was} - {at})))})


def _of_part(text: str, context: Context) -> Settings | None:
    """«morning ping at 6 please»: the reminder of that half of the day, at another hour."""
    found = _PART_AT.search(text) or _EACH_PART.match(text)
    told = found.groupdict() if found else {}
    new = clocks(_GLUED.sub(r"\1:\2", told.get("new") or told["hour"])) if found else ()
    if found is None or not new:
        return None
    late = "morning" not in (told.get("part"), told["half"])
    kept = {hour for hour in context.flip_hours if (hour.hour >= _EVENING_FROM) != late}
    return Settings({"flip_hours": tuple(sorted(kept | {_in_half(new[0], late=late)}))})


def _apart(one: time, other: time) -> float:
    """Hours between two hours of a clock of twelve: «8» may be 20:00."""
    gap = abs((one.hour + one.minute / 60) % 12 - (other.hour + other.minute / 60) % 12)
    return min(gap, 12 - gap)


def _only(text: str, context: Context) -> Settings | None:
    """«ping me evenings only»: one flip a day, at the hour that this person has then."""
    found = _ONLY.search(text) if re.search(r"\bonly\b|\bjust\b", text) else None
    if found is None:
        return None
    late = found["when"] == "evening"
    mine = [hour for hour in context.flip_hours if (hour.hour >= _EVENING_FROM) == late]
    return Settings({"flip_hours": (mine[0] if mine else _HABITS[found["when"]],)})


def _awake(text: str) -> Settings | None:
    """The hours between which somebody may be called at all; «at 7 and 9» without «between» are two calls."""
    found = _AWAKE.match(text) if re.search(r"\b(?:only|just)\b", text) else None
    if found is None or (" and " in text and "between" not in text):
        return None
    begins, ends = clocks(found["from"]), clocks(found["to"])
    return Settings({"quiet_from": _in_half(ends[0], late=True), "quiet_to": begins[0]}) if begins and ends else None


def read_quiet(text: str, context: Context) -> Settings | None:
    """Hours at which nobody is called, where a plain text is no more than that: «no pings before 7 or after 10»."""
    return _quiet(text) if _QUIET.match(text) and not text.endswith("?") else None


def _quiet(text: str) -> Settings | None:
    if not _QUIET.search(text):
        return None
    hours = clocks(text)
    if not hours and re.search(r"\b(?:at night|nights?|overnight|nachts|while i sleep|wake me)\b", text):
        return Settings({"quiet_from": _NIGHT[0], "quiet_to": _NIGHT[1]})
    if len(hours) == 2 and (either := _EITHER_SIDE.search(text)):
        early, late = hours if either["first"] == "before" else hours[::-1]
        return Settings({"quiet_from": _in_half(late, late=True), "quiet_to": early})
    if len(hours) == 2:
        if _AT_WORK.search(text) and "night" not in text and hours[1].hour <= hours[0].hour < NOON:
            return Settings({"quiet_from": hours[0], "quiet_to": _in_half(hours[1], late=True)})
        by_day = hours[1].hour > NOON or _BY_DAY.search(text)  # «from 9 to 15» is on a clock of 24 hours
        return Settings({"quiet_from": hours[0] if by_day else _evening(hours[0], text), "quiet_to": hours[1]})
    if len(hours) == 1 and re.search(r"\b(?:before|vor)\b", text):
        return Settings({"quiet_to": hours[0]})
    if len(hours) == 1 and re.search(r"\b(?:after|past|nach|from)\b", text):
        return Settings({"quiet_from": _evening(hours[0], text)})
    return None


def _sleeps(text: str, context: Context) -> Settings | None:
    """The hours of the night by when somebody goes to bed or gets up."""
    found = _SLEEPS.match(text)
    hours = clocks(found["hours"] if found and " to " in found["hours"] else f"at {found['hours']}") if found else ()
    if found is None or not hours:
        return None
    if len(hours) == 2 and found["asleep"]:
        return Settings({"quiet_from": _evening(hours[0], text), "quiet_to": hours[1]})
    if len(hours) != 1:
        return None
    if found["bed"]:
        return Settings({"quiet_from": _evening(hours[0], text)})
    return Settings({"quiet_to": hours[0]}) if found["up"] or found["till"] else None


def _evening(hour: time, text: str) -> time:
    """«quiet from 10 to 7» begins in the evening: an hour of 8 to 11 without am or pm is pm."""
    spoken = re.search(rf"\b0?{hour.hour}(?:[:.]\d\d)? ?(am|pm)\b", text)
    return hour.replace(hour=hour.hour + 12) if 8 <= hour.hour <= 11 and not spoken else hour


def _flip_hours(text: str, context: Context) -> Settings | None:
    if (
        re.search(r"\b(?:done|did|does|doing|takes|handles|minds|is|missed|forgot|skipped|was|were)\b", text)
        or _MAY_I.search(text)
        or not _FLIPS.search(text)
        or not _SET_HOURS.search(text)
    ):
        return None
    habits = [_HABITS[word] for word in re.findall(r"[a-z]+", text) if word in _HABITS]
    if habits and not re.search(r"\d", text):  # «flips with breakfast and supper»
        return Settings({"flip_hours": tuple(sorted(dict.fromkeys(habits)))})
    hours = clocks(re.sub(r"\b(?:once|twice) a day\b", "", text))
    if not hours or len(hours) > 4 or (re.search(r"\bflip (?:it|at)\b", text) and len(hours) == 1):
        return None
    if len(hours) == 2 and hours[0] == hours[1]:  # «at 7 and 7»
        hours = (hours[0], hours[0].replace(hour=(hours[0].hour + 12) % 24))
    return Settings({"flip_hours": tuple(sorted(dict.fromkeys(hours)))})
