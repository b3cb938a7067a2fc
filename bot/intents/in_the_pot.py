"""A pot instead of a fire: «put the pot on», «its in the water now, just simmering», once that is what comes next."""

from typing import Final

from bot.intents.context import Context
from core import patterns as re
from core.plan.steps import Kind

_OPENS: Final = r"^(?:(?:ok|so|right|just|i|we|ive|have|and|now|then)[, ]+)*"
_POT: Final = r"(?:the |my |a )?(?:big )?(?:pot|pan|casserole|dutch oven|stock ?pot)"
_POT_ON: Final = re.compile(
    rf"{_OPENS}(?:(?:put|got|set|stuck) (?:{_POT}|the water)(?: of water)? on|(?:{_POT}|(?:the )?water)s? (?:is )?"
    r"(?:on|heating(?: up)?|warming(?: up)?|coming up))"
    r"(?:,? (?:now|to (?:heat|warm|boil|simmer)(?: up)?|on the (?:stove|hob|heat)|the (?:stove|hob|heat)))*$"
)
_IT: Final = r"(?:(?:it|its|meat|the meat|beef|the beef|she|shes|her)(?: is| went| goes)? )?"
_IN_IT: Final = re.compile(
    rf"{_OPENS}(?:(?:put|popped|dropped|lowered|got) )?{_IT}"
    rf"(?:in(?:to)? {_POT}(?! of (?:cold|fresh|clean|iced?|plain)\b)|in(?:to)? (?:the )?(?:hot|simmering|warm) water"
    r"|in(?:to)? (?:the )?water(?= .*\b(?:simmer\w*|stove|hob)\b))\b[^?\d]*$"
)
_NEXT: Final = (str(Kind.LIGHT), str(Kind.MEAT_ON))


def in_the_pot(text: str, context: Context) -> str:
    """A plain line with a pot that is put on as «lit it», and with meat that goes into it as «meat is on»."""
    steps = [step.partition("/")[0] for step in (context.due_step, context.soon_step) if step]
    if context.phase != "drying":
        return text
    if _POT_ON.match(text) and any(step in _NEXT for step in steps):
        return "lit it"
    return "meat is on" if _IN_IT.match(text) else text
