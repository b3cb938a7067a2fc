"""A meal by its bare hour, «guests are late make it 2», and one that stays on its day, «scrap that keep sat»."""

from typing import Final

from bot.intents import when
from bot.intents.called import one_called
from bot.intents.context import Context
from bot.intents.intents import Intent, MoveDeadline, Unclear
from bot.intents.moves import A_WEEKDAY, OF_THE_MEAL
from bot.intents.start import assumptions
from core import patterns as re

_MAKE_IT: Final = re.compile(
    r"^(?P<who>.*)\bmake it (?:more like |about |around |at )?"
    r"(?P<hour>(?:1[0-2]|[1-9])(?:[:.][0-5]\d)?)(?P<spoken> oclock)?"
    r"(?: (?:then|please|now|instead|today|tonight))*$"
)
_MADE_FOR: Final = re.compile(  # «make the bacon for sunday»: the day on which it is eaten
    r"^(?:(?:ok|so|actually|no|please|lets|we will|ill),? )*(?:make|do|have|get) (?:the|my|our) "
    rf"(?P<who>[a-z]+(?: [a-z]+)?) (?:ready )?for (?P<day>(?:{A_WEEKDAY}|tomorrow|the \d).*)$"
)
_INSTEAD: Final = re.compile(
    rf",? (?:instead of|not|rather than) (?:on )?(?:{A_WEEKDAY}|tomorrow|the \d{{1,2}}\w{{0,2}})$"
)
_STAYS: Final = re.compile(
    r"^(?:(?:(?:no|nah|scrap|forget|ignore|scratch|cancel|undo|actually|sorry|ok|wait)(?: (?:that|it|this|then))?"
    r"[,.; ]+)*)(?:keep|leave|stick|stay|hold)(?: (?:it|with|to|on|at|for|the|meal|dinner|lunch|day|our))* "
    rf"(?P<day>{A_WEEKDAY})(?: (?:then|please|pls|after all|as it was|as planned|as before|instead))*$"
)
_EITHER_HOUR: Final = re.compile(  # «make it 7 or 8»: whether it is the meal and which of them, is asked
    r"^(?:(?:so|ok|well|actually|maybe|lets) )*make (?:it|dinner|lunch|supper|the meal) (?:at |for )?"
    r"(?P<one>1[0-2]|[1-9]) or (?P<two>1[0-2]|[1-9])$"
)
_EITHER_DAY: Final = re.compile(
    rf"^(?:(?:on|maybe|either|its|make it) )*(?P<one>{A_WEEKDAY}),? or (?:on )?(?P<two>{A_WEEKDAY})[ ?]*$"
)


def stays(text: str) -> bool:
    """Whether a plain text says that a meal stays on its day."""
    return bool(_STAYS.match(text.strip(" .!")))


def read_day_kept(text: str, context: Context) -> MoveDeadline | Unclear | None:
    """The meal stays on a day that is named, or goes back to it; of two days it is asked which."""
    if context.deadline and (days := _EITHER_DAY.match(text)):
        either = (when.meal(days[name], context) for name in ("one", "two"))
        return Unclear("word", text[:60], tuple(MoveDeadline(to=said.at) for said in either if said))
    found = _STAYS.match(text.strip(" .!")) if context.deadline else None
    said = when.meal(found["day"], context) if found else None
    return MoveDeadline(to=said.at) if said else None


def read_made(text: str, context: Context) -> Intent | None:
    """The hour of the meal where guests or the meal are spoken of; alone it is offered."""
    if moved := _made_for(text.strip(" .!"), context):
        return moved
    if context.deadline and (hours := _EITHER_HOUR.match(text)):
        either = (when.meal(f"at {hours[name]}", context) for name in ("one", "two"))
        return Unclear("word", text[:60], tuple(MoveDeadline(to=said.at) for said in either if said))
    found = _MAKE_IT.match(text.strip(" .!")) if context.deadline else None
    said = when.meal(f"at {found['hour']}", context) if found else None
    if found is None or said is None:
        return None
    to = MoveDeadline(to=said.at, assumed=tuple(assumptions(said)))
    if OF_THE_MEAL.search(found["who"]):
        return to
    return None if found["spoken"] else Unclear("word", text[:60], (to,))


def _made_for(text: str, context: Context) -> MoveDeadline | None:
    """The meal of the batch that is named, on the day that it shall be made for."""
    found = _MADE_FOR.match(_INSTEAD.sub("", text))
    name = one_called(found["who"], context.of_what) if found else ""
    said = when.meal(found["day"], context) if found and name else None
    if said is None or not said.day_said:
        return None
    key = next((key for key, called in context.batches if called.lower() == name), None)
    return MoveDeadline(to=said.at, batch=key, assumed=tuple(assumptions(said)))
