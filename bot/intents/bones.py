"""Whether the bone is in, told anew of a ham or a shoulder: «its not bone in after all, the butcher took it out»."""

from typing import Final

from bot.intents.called import in_hand
from bot.intents.context import Context
from bot.intents.intents import Change
from bot.intents.meats import BY_BONE, bone, without
from bot.intents.small import words
from core import patterns as re

_AROUND: Final = words(
    """oh hang on hold sorry oops wait no not yes so and but actually its it is was it's the this that a an my one
    ham leg gammon joint shoulder butt picnic meat piece in out bone boned deboned butcher he she they took
    take taken cut removed has had have been already did got with by still now turns just for me us after all
    mistake said say wrong thought looked"""
)


def read_bone(text: str, context: Context) -> Change | None:
    """The cut of the piece in hand, with its bone or without, where a plain text says only that; before the cure."""
    here = in_hand(dict(context.batches).get(context.batch or "", ""), context.of_what)
    if here is None or here[1] not in BY_BONE or context.phase != "waiting" or text.endswith("?"):
        return None
    told = bone(text, here[1])
    if not told or told == here[2]:
        return None
    rest = re.findall(r"[^\W_]+", without(text))
    return Change({"cut": told}) if set(rest) <= _AROUND else None
