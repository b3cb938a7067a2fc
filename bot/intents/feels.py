"""How warm it feels, without a number: «its hot», «probe tender»."""

from typing import Final

from core import patterns as re

_HOT: Final = re.compile(
    r"(?:(?:ok|yes|yep|its|it is|it|bit|stone|ice|properly|proper|nice|and|cold|the|meat|pit|fridge|very|too|so"
    r"|really|getting|feels|feel|seems|kind of|a bit|rather|got"
    r"|inside|in there|is|now) ?)+(?:hot|warm|cold|low|high)(?: enough(?= i think"
    r"| now$))?(?: to (?:the )?touch)?(?: in there| inside"
    r"| now| i think)?"
    r"|(?:(?:its|it is|feels|the|probe|meat|now|nice and|really|probes?) ?)*(?:tender|soft|like butter|jiggly)"
)


def hot_words(text: str) -> bool:
    """«its hot», «probe tender»: a temperature without a number."""
    return bool(_HOT.fullmatch(text.strip(" !.")))
