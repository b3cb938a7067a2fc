"""What is told of the meal once the meat is cooked and cold: heated for it, on the table, or eaten, and how it was.

A core that is read as it is heated again belongs to no chill, so it is kept as no reading.
"""

from typing import Final

from bot.intents.context import COOKED, Context
from bot.intents.intents import Intent, StepDone, Unclear
from bot.intents.small import ASKS, IF
from bot.measures import to_house
from core import patterns as re
from core.plan.steps import Kind
from core.safety.heat import REHEATED_F
from core.units import celsius_from_fahrenheit

_HEATED: Final = re.compile(
    r"\b(?:re-?heat(?:ed|ing)|(?:heat|warm)(?:ed|ing) (?:(?:it|them|some|slices|the \w+) )?(?:up|through|again)"
    r"|steam(?:ed|ing) (?:it |them |some |the \w+ )?(?:to|until|at|its|now)\b)"
)
_CORE: Final = re.compile(
    r"(?<![\d.:])(?P<n>\d{2,3})(?: ?°? ?(?P<unit>[cf])\b)?(?! ?(?:min|h|am|pm|slices|people|ppl)|[:\d])"
)
_THANKS: Final = r"(?:[,;.]? (?:thanks?|thx|ty|cheers|ta|thank you)(?: (?:so much|a lot|again))?(?![^\W\d_]))?"
_EATEN: Final = re.compile(
    r"^(?:the |this |our )?(?:batch|cook) (?:is |s )?(?:all )?(?:finished|over|done|complete)$"
    r"|^(?:thats (?:it|all),? )?(?:were|we are|im|i am) (?:all )?(?:done|finished) "
    r"(?:here|with (?:it|this|this one|the batch))$"
    r"|^(?:the |our )?(?:dinner|lunch|meal|supper|food) was (?:\w+ )?"
    r"(?:great|good|lovely|delicious|amazing|perfect|brilliant)$"
    r"|^(?:(?:ok|and|so|all|its|were|we are|were all|everything|everyone|im|just|the|dinner|lunch|supper|meal|party|is"
    r"|was) )*(?:done|finished|over|gone|full|eaten)"
    r"(?: (?:eating|it|here|now|with it|with dinner|with lunch|at last))*"
    rf"{_THANKS}"
    r"(?:[,;.]? ?(?:and |it |that |everyone |all |meat |we )*(?:was|were|turned out|came out|tasted|loved|said|had)\b"
    r"|,? (?:10|\d(?:\.5)?) ?(?:/|out of|of) ?(?:10|5)$|,? everyone (?:is )?(?:happy|full|loved)\b"
    r"|,? (?:great|good|lovely|delicious|amazing|tasty|perfect|brilliant|yum\w*|excellent|superb)\b| eating$)"
)
_AT_TABLE: Final = re.compile(
    r"^(?:(?:ok|right|so|and|now|just|all|were|we are|im|were all|everyone is|everyones|its|it is|the \w+ is|food is"
    r"|dinner is|lunch is|finally) )*"
    r"(?:eat|eating|(?:dinner|lunch|supper|meal) ?time|time to eat"
    r"|tucking in|digging in|dishing(?: it)? up|serving(?: it)?(?: up)?|plating(?: it)?(?: up)?"
    r"|sat down to eat|sitting down(?: to (?:eat|dinner|lunch|supper|it))?|(?:on|at) the table|being eaten)"
    r"(?: (?:it|this|now|right now|already|at last|the (?!rest|others?)\w+|here|together))*$"
)
_SOME: Final = (
    r"(?:some|half|most|(?:a|one|two|\d) (?:few|couple|packs?|packets?|bags?|bits?|slabs?|pieces?|chunks?|parcels?"
    r"|slices?|rashers?|bites?|taste|third|quarter))(?: (?:of (?:it|them|the \w+)|slices?|rashers?|bits?))*"
)
_A_PART_EATEN: Final = re.compile(  # «kids had some for breakfast», «gave next door a pack», «sent a slab to my mum»
    rf"^(?:(?!not|never|nobody|havent|will|ill)\w+ ){{0,3}}(?:(?:gave|sent|brought|handed|passed)"
    rf"(?: (?!it )[a-z]+){{0,3}} {_SOME}(?: (?:to|for|over|round|away)(?: [a-z]+){{0,4}})?"
    rf"|(?:had|tried|fried|ate|eaten|enjoyed)(?: up)? {_SOME}(?:,? (?:for (?:breakfast|brunch|lunch|dinner|supper|tea)"
    r"|on toast|in (?:a|the|our|my) \w+|with \w+|already|today|tonight|earlier|just now|yesterday|this morning"
    r"|last night|at the weekend))*)"
    r"(?:,? (?:and |but )?(?:it )?(?:was|were|tasted|is|its) (?:\w+ ?){1,4})?$"
)
GONE: Final = "gone"
PRAISED: Final = "praised"
_ALL_GONE: Final = re.compile(
    r"\b(?:all|its|everythings?)(?: (?:is|all|of it|been))* (?:gone|eaten)\b|\bnothing(?: is|s)? left\b"
    r"|\b(?:every|not a) (?:last )?(?:bite|crumb|slice|bit)\b|\b(?:scoffed|devoured|polished off)\b"
)
_PRAISE: Final = re.compile(
    r"(?<!not )(?<!nt )(?<!not so )\b(?:great|good|lovely|delicious|amazing|awesome|tasty|perfect|brilliant|yum\w*"
    r"|excellent|superb|fantastic|loved|happy|best)\b"
)
_TO_TABLE: Final = (str(Kind.SLICE), str(Kind.SERVE))  # what is called for, of meat that is eaten hot
_COLD_C: Final = 5.0  # the chill is over, as far as a reading shows
_REHEATED_C: Final = celsius_from_fahrenheit(REHEATED_F)


def read_served(text: str, context: Context) -> Intent | None:
    """What a plain text tells of the meal, where the meat is cooked: it rests, chills or is stored."""
    if context.phase not in COOKED or ASKS.search(text) or IF.search(text):
        return None
    if context.phase != "resting" and _HEATED.search(text):
        return _heated(text, context)
    at_table = _AT_TABLE.match(text)
    cold = context.phase == "stored" or (context.last_core_c is not None and context.last_core_c <= _COLD_C)
    hot = context.phase == "resting" and (context.due_step or context.soon_step or "").startswith(_TO_TABLE)
    if not at_table and not _EATEN.match(text) and not (cold and _A_PART_EATEN.match(text)):
        return None
    meal = StepDone(str(Kind.SERVE), detail=how_it_was(text))
    return meal if cold or hot else Unclear("eat_now" if at_table else "likely", text[:60], () if at_table else (meal,))


def how_it_was(text: str) -> str:
    """What is told of the meal beside that it was: "gone" where nothing is left, "praised", both, or ""."""
    told = (word for word, said in ((GONE, _ALL_GONE), (PRAISED, _PRAISE)) if said.search(text))
    return " ".join(told)


def _heated(text: str, context: Context) -> Unclear:
    """Hot enough to be eaten by the number that was told, in each unit in which it can be one; else to be heated on."""
    said = _CORE.search(text)
    own = context.units.temperature
    units = (said["unit"],) if said and said["unit"] else (own,) if said and float(said["n"]) <= 100 else ("f",)
    hot = said is not None and to_house(float(said["n"]), units[0]) > _REHEATED_C - 0.01
    return Unclear("reheated" if hot else "reheat", text[:60], (StepDone(str(Kind.SERVE)),) if hot else ())
