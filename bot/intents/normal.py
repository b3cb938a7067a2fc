"""A line as the readers want it: the same words in plain letters, digits and English, with one space between them."""

import unicodedata
from functools import lru_cache
from typing import Final

from bot import measures
from bot.intents.brinings import joined
from bot.intents.rewriting.continental import insular
from bot.intents.rewriting.plainer import plainer, unsigned
from bot.intents.rewriting.rethought import rethought
from bot.intents.rewriting.runon import parted
from bot.intents.rewriting.slips import mended
from bot.intents.rewriting.spelling import written
from bot.intents.rewriting.tongue import english
from core import patterns as re

SILENT: Final = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]")
_APOSTROPHES: Final = str.maketrans(
    {"'": "", "’": "", "‘": "", "`": "", "´": "", "″": '"', "”": '"', "“": '"', "„": '"', "º": "°"}
)
_WE_WOULD: Final = re.compile(r"\bwe['’‘`´]d\b", re.IGNORECASE)  # without its sign it would be a Wednesday
# before the fold, which would make 1½ an eleven
_VULGAR: Final = str.maketrans({sign: f" {unicodedata.normalize('NFKC', sign)}" for sign in "½¼¾⅓⅔⅛⅜⅝⅞"})
_COMMAND: Final = re.compile(r"^/(?P<word>[a-z_]{2,20})(?:@\w{1,40})?\b")
_DAY_ISH: Final = re.compile(  # «sat 5ish» is an hour, and no date
    r"\b(mon|tues?|wed|thu(?:rs)?|fri|sat|sun|\w{3,6}day|tomorrow|tonight) (1[0-2]|[1-9])ish\b", re.IGNORECASE
)
_WORD_ISH: Final = re.compile(r"\b(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)ish\b", re.IGNORECASE)
_QUOTED: Final = re.compile(r"(^|\s)\"([^\"]{1,40})\"(?=$|[\s,.;!?])")  # «it says "cure 1"»: no inch
_FACE: Final = re.compile(r"(?<=\w) ?[:;]-?[()/|]+ (?=\w)")  # «fridge 44 :( the door was open»: it parts two clauses
_MENTION: Final = re.compile(r"^@\w{2,40}[,: ]*|\s@\w{2,40}$")


@lru_cache(maxsize=256)  # a line is read by several readers, and in several batches
def normal(text: str, language: str = "en", celsius: bool = False) -> str:
    """A line as the readers want it: lower case, plain digits, straight quotes, one space, English words.

    `celsius` says that the person reads in °C: whoever is spoken to in a language of the Continent then means it by
    «5 grad», however a fridge of 5 °F or a core of 160 °F might do as well.
    """
    text = unsigned(SILENT.sub(" ", text).replace("\n", " ; "))
    text = _WE_WOULD.sub("we would", text.translate(_VULGAR))
    text = unicodedata.normalize("NFKC", text.translate(_APOSTROPHES)).translate(_APOSTROPHES)
    if '"' in text:
        text = _QUOTED.sub(r"\1\2", text)
    if "ish" in text.casefold():
        text = _DAY_ISH.sub(r"\1 at \2", _WORD_ISH.sub(r"at \1", text))
    plain = _MENTION.sub("", measures.plain(_FACE.sub(", ", text))).strip()
    command = _COMMAND.match(plain)
    if command and command["word"] != "start":
        plain = f"{command['word'].replace('_', ' ')} {plain[command.end() :].strip()}".strip()
    return joined(parted(rethought(written(plainer(mended(insular(english(plain, language, celsius))))))))
