"""A soak told freely, once the meat is out: «put it in fresh water in the fridge», «water changed», «out of the water».

It comes back as the plain words that the readers know. While it lies in its cure, water is told of something else,
but where it is due out: then it is asked whether it is.
"""

from datetime import timedelta
from typing import Final

from bot.intents.context import Context
from core import patterns as re

_SOON_OUT: Final = timedelta(hours=12)
_SPAN: Final = r"(?:half an? (?:h|hrs?|hours?)|(?:an?|\d{1,3}(?:\.\d)?)(?: |(?<=\d))(?:h|hrs?|hours?|m?mins?|minutes?))"
_OPENS: Final = r"^(?:(?:ok|so|and|now|then|right|i|we|ive|have|just|its|im|it is|am|it|them|again|back)[, ]+)*"
_IT: Final = r"(?:it|them|him|her|the (?:meat|piece|joint|lot|flat|belly|brisket|ham|point|loin))"
_WATER: Final = (
    r"(?:a |the |some |its )?(?:(?:big |large )?(?:bowl|tub|pot|bucket|sink|basin|dish|tray|bath) of )?"
    r"(?:(?:fresh|cold|clean|plain|iced?|new|cool|icy|tap) )*water"
)
_WHERE: Final = (
    r"(?:,? (?:in (?:the )?fridge|now|again|overnight|for a (?:bit|while)|to (?:soak|draw the salt(?: out)?)))*"
)
_LIES: Final = re.compile(  # it lies there, or is put there
    rf"{_OPENS}(?:(?:put|set|left|laid|stuck|popped|dropped|plonked|chucked|got|having|have|letting|leaving) {_IT} |"
    rf"(?:sitting|lying|sits|lies|sat|laying) |in(?=to? | ))"
    rf"?(?:(?:sit|lie|soak|stand|rest|back) )?(?:in|into) {_WATER}{_WHERE}"
    rf"(?:,? (?:for )?(?P<long>{_SPAN})(?P<on> more| longer)?)?{_WHERE}$"
)
_LAY: Final = re.compile(  # it did, and is over
    rf"{_OPENS}(?:(?:gave|give|given|had) {_IT} (?P<long>{_SPAN}) in {_WATER}"
    rf"|(?:had|left|kept) {_IT} in {_WATER} (?:for )?(?P<lasted>{_SPAN}|overnight|all night)"
    rf"|(?:it )?(?:sat|lay|was|been) in {_WATER} (?:for )?(?P<sat>{_SPAN}|overnight|all night))(?P<rest>$|[,;] ?| and )"
)
_CHANGED: Final = re.compile(
    rf"{_OPENS}(?:(?:changed|swapped|renewed|replaced|freshened) (?:the |its )?(?:soak(?:ing)? )?water"
    rf"|(?:the )?water (?:is )?(?:changed|swapped|renewed)|(?:fresh|new|clean) water(?: (?:on|in|again|now))+)"
    rf"(?:(?:,| for| and)* (?:for |another )*(?P<long>{_SPAN}|(?:half )?hour))?$"
)
_OUT: Final = re.compile(
    rf"{_OPENS}(?:(?:took|taken|pulled|lifted|got|fished) )?(?:{_IT} )?(?:is )?"
    rf"(?:out of (?:the |its )?(?:soak(?:ing)? )?(?:water|bath)|(?:done|finished|through) soaking)(?=$|[,;]| and )"
)


def soak_told(text: str, context: Context) -> str:
    """A plain line with a soak that is told in other words as «soaking it», «soaked it 2 hours», «soak is over»."""
    over = context.phase == "curing" and context.out_due is not None and context.out_due - context.now <= _SOON_OUT
    if not (context.phase == "drying" or over) or text.endswith("?"):
        return text
    if found := _LIES.match(text) or _CHANGED.match(text):
        long = f"an {found['long']}" if found["long"] in ("hour", "half hour") else found["long"]
        return f"soaking it for {long}" if long else "soaking it"
    if found := _LAY.match(text):
        return f"soaked it {found['long'] or found['lasted'] or found['sat']}{found['rest']}{text[found.end() :]}"
    return _OUT.sub("soak is over", text)
