"""A plain line in the words that the readers know, as far as they hang on where the batch stands."""

from typing import Final

from bot.intents.context import Context
from bot.intents.half_hours import half_past, of_this_hour
from bot.intents.in_the_pot import in_the_pot
from bot.intents.soaks import soak_told
from bot.intents.weighed_out import weighed_out
from core import patterns as re

_INSISTS: Final = re.compile(  # «trust me, 300 ppm»: what follows is read as anybody's
    r"^(?:(?:but|well(?! be\b)|look|please|just|trust me|believe me|i know what (?:i am|im) doing"
    r"|(?:tell|give|show) me(?= (?:the )?(?:grams|dose) for \d)"
    r"|(?:i am|im) an? (?:chemist|butcher|chef|cook|doctor|professional|expert)),? )+(?=\w.*\d)"
)
_AND: Final = re.compile(  # «and its in», said after something else
    r"^(?:and|n|&) (?=(?:its|it is|theyre|they are|he is|she is|in|on|out|off|now)\b[^?]*$)(?!in the\b)"
)

_PULLED: Final = re.compile(  # out of its brine, and no way in which it is eaten
    r"^((?:(?:ok|so|right|just|i|we|ive|have|and|now|finally|morning)[, ]+)*)pulled (?:it|them|her|him|the \w+)"
    r"(?: out)?(?: of (?:the|its) (?:brine|cure|bag|tub|bucket|pickle|water))?(?=$|[,;]| (?:and|now|just|at|this|last"
    r"|early|today|yesterday)\b)"
)


def in_plain_words(text: str, context: Context) -> str:
    """The line with its spoken hours, what is pulled, a pot, a soak and the grams that were weighed as is written."""
    text = _PULLED.sub(r"\1took it out", text) if context.phase == "curing" else text
    text = in_the_pot(text, context)
    text = _AND.sub("", _INSISTS.sub("", text))
    return weighed_out(soak_told(of_this_hour(half_past(text, context), context), context), context)
