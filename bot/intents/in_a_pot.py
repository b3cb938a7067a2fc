"""Meat that shall go into a pot and not on a fire: «no smoker here, ill boil it», «simmer it instead of smoking it»."""

from typing import Final

from bot.intents.called import in_hand
from bot.intents.context import UNCOOKED, Context
from bot.intents.intents import Change
from core import patterns as re

SIMMERED: Final = {"ham": "boiled_ham", "pastrami": "corned_beef"}
"""What a product is called that is cured alike and simmered."""
_IT: Final = r"(?: (?:it|them|this|that|the (?:ham|gammon|joint|leg|meat|beef|brisket|flat)))?"
_SIMMER: Final = rf"(?:boil|simmer|poach)(?:ing|ed)?{_IT}"
_NO_FIRE: Final = (
    r"(?:(?:i |we )?(?:(?:dont have|havent got) (?:an?|any)|(?:have|got|theres|there is) no)|no|not got an?"
    r"|without an?) (?:smoker|grill|pit|fire|cooker|bbq|barbecue)(?: (?:here|at home|anymore|any more))?"
)
_I: Final = (
    r"(?:(?:so|and|but|ok|i|ill|i will|we|well|im|gonna|going to|want to|wanna|would rather|id rather|just|only|rather"
    r"|lets|please|have to|need to|had to|can|could|do|cook|make|its|it is|gonna be|being|be|to|now),? )*"
)
_NOT_SMOKED: Final = (
    r"(?:,? (?:instead(?: of (?:smok\w+(?: it)?|the (?:smoker|fire|grill)|on the \w+))?|rather than smok\w+(?: it)?"
    r"|(?:and )?not smok\w+(?: it)?|(?:and )?not (?:on|in) the (?:smoker|fire|grill)|(?:and )?no smok(?:e|ing|er)))"
)
_IN_A_POT: Final = (
    r"(?:(?:it(?:s)?|them|this) )?(?:(?:is )?(?:going|goes|cook(?:ed|ing)?) )?in(?:to)? (?:a|the) (?:big |stock ?)?pot"
    r"(?: (?:of|with) (?:hot )?water)?(?: on the (?:stove|hob))?"
)
_WISHED: Final = re.compile(
    rf"^(?:{_NO_FIRE},? {_I}(?:{_SIMMER}|{_IN_A_POT})(?: (?:instead|then|please))*"
    rf"|{_I}(?:{_SIMMER}|{_IN_A_POT})(?: in (?:water|a pot|the pot))?{_NOT_SMOKED}(?: (?:then|please))*"
    rf"|(?:no|not|dont|instead of) smok(?:e|er|ing|ed)(?: it)?,? {_I}(?:{_SIMMER}|{_IN_A_POT})(?: (?:instead|then))*)$"
)


def read_in_a_pot(text: str, context: Context) -> Change | None:
    """The product that a ham or a brisket becomes where a plain text has it simmered, before it is on a fire."""
    here = in_hand(dict(context.batches).get(context.batch or "", ""), context.of_what)
    if here is None or here[1] not in SIMMERED or context.phase not in UNCOOKED:
        return None
    return Change({"product": SIMMERED[here[1]]}) if _WISHED.match(text.strip(" .!?")) else None
