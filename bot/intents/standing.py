"""What holds for a person, asked for: «which units do you use», «what time is it for you», «wake me for the fire»."""

from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Ask
from bot.intents.zones import city
from core import patterns as re

_ASKED: Final = tuple(
    (field, re.compile(rf"(?:(?:so|and|ok|hey|but) )*(?:{words})"))
    for field, words in (
        (
            "units",
            r"units|(?:what|which) units?(?: (?:am|on|do|are|is|should|will|you|we|i|my|use|using|have|speak|set|in))*",
        ),
        (
            "zone",
            r"(?:what|which)(?: is|s)? (?:my |the |your |our )?(?:time ?zone|clock)(?: (?:do|are|is|am|it|you|we|i|set"
            r"|to|in|on|use|using|have))*|whats? (?:is )?the time(?: for you| there| now| here)?"
            r"|what time (?:is it|do you have|have you got)(?: for you| now| there| here)*",
        ),
        (
            "quiet_from",
            r"(?:(?:what|when)(?: is| are|s)? (?:my |the |your )?)?quiet (?:hours?|times?)"
            r"|when (?:are|do) you (?:go |stay |keep )?quiet|(?:(?:you can|you may|please|do|always|but|only) )*wake me"
            r"(?: up)?(?: only)? (?:for|if|when) (?:(?:the|it|its|is|theres|there|a|an|about) )*(?:fire|chill|chilling"
            r"|safety|emergency|emergencies|important|urgent|dangerous)(?: (?:needs me|goes out|is out|dies))?",
        ),
        ("flip_hours", r"(?:(?:what|when|which)(?: are| is|s)? (?:my |the )?)?flip (?:hours|times)"),
        (
            "jurisdiction",
            r"(?:which|what|whose) (?:law|laws|limits?|rules|country)(?: (?:do|are|am|is) (?:you|we|i|it))(?: (?:use"
            r"|using|go|going|by|under|set|to|on|follow|following))*",
        ),
    )
)
_JOURNEY: Final = re.compile(
    r"^(?:(?:im|i am|we are|were|ill be|well be|i|we) )*(?:off|flying|going|travell?ing|driving|heading|leaving|travel"
    r"|fly|go|drive) (?:to|for) (?P<place>[^\W\d_][\w/ ]{1,39}?)"
    r"(?: (?:on |next |this |early )*(?:tomorrow|tonight|later|soon|week|weekend|month"
    r"|(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*))+$"
)
_RENAMED: Final = re.compile(
    r"^(?:please )?(?:rename\b.+|(?:call|name) (?:it|this one|that one|the batch|(?P<name>[\w ]+?))"
    r" (?!off|a day|done)[\w «»\"]+)$"
)


def read_standing(text: str, context: Context) -> Ask | None:
    """Which of the settings is asked for, or a journey that is still to come."""
    bare = text.strip(" ?.!")
    field = next((field for field, words in _ASKED if words.fullmatch(bare)), None)
    if field:
        return Ask("settings", about=field, text=text)
    if (named := _RENAMED.match(bare)) and (not named["name"] or _is_batch(named["name"], context)):
        return Ask("renamed", text=text)
    journey = _JOURNEY.match(bare)
    return Ask("journey", about=journey["place"].title(), text=text) if journey and city(journey["place"]) else None


def _is_batch(name: str, context: Context) -> bool:
    return name.removeprefix("the ") in {known.lower() for _, known in context.batches}
