"""What asks for nothing: a greeting, thanks, a nod; and a call for help."""

from typing import Final

from bot.intents.context import Context
from bot.intents.intents import Greet, Help, Intent
from bot.intents.questions import is_question
from core import patterns as re

_HELP: Final = re.compile(
    r"^(?:units|language|options)$|^(?:whats|what is) (?:this|that bot|this bot)$|^what can (?:you|u) make$"
    r"|^/?(?:help|hilfe|commands?|menu|\?+|what (?:can you|you can) (?:do"
    r"|help with)(?: for (?:me|us))?"
    r"|how (?:does this|do you) work|how do i use (?:this"
    r"|you))\b[ ?!.]*(?:me)?$"
)
_THANKED: Final = re.compile(r"^(?:thanks?|thank you|many thanks)\b[^\d?]*$")
_GREET: Final = re.compile(
    r"^/start\b|^(?:(?:hi+|hey+|hello|hallo|yo|hiya|howdy|servus|moin|good (?:morning|evening|afternoon)"
    r"|guten (?:morgen|tag|abend)|thanks?|thank you|ty|ta|tks|tnx|thx|danke|cheers|great|cool|nice|"
    r"perfect|awesome|lovely|brilliant|super|bye|good ?night|cu|there|so much|a lot|bot|all|and|ok(?:ay)?|k"
    r"|(?:ive |i |i have )?got (?:it|this)|i have it"
    r"|gotcha|alright|very|much|mate|will do|roger|understood|noted|(?:going|off) to bed|(?:it was "
    r"|its )?(?:delicious|tasty|great|amazing)|yum|yummy|wow|lecker|lol|haha)[ ,.!]*)+$"
)
BEYOND: Final = 4  # words: more than «for the help»
_THANKS: Final = re.compile(r"\b(?:thanks?|ty|ta|tks|tnx|thx|danke|cheers)\b")
_HELLO: Final = re.compile(
    r"^/start\b|\b(?:hi+|hey+|hello|hallo|yo|hiya|howdy|servus|moin|good (?:morning|evening|afternoon)"
    r"|guten (?:morgen|tag|abend))\b"
)


def read_plain(text: str, context: Context) -> Intent | None:
    """A greeting or a call for help."""
    if _HELP.search(text):
        return Help()
    return greeting(text) if _GREET.search(text) else None


def thanked(text: str) -> bool:
    """Whether a line that nobody understood begins as thanks, and asks and tells no number."""
    return bool(_THANKED.match(text))


def beyond_greeting(text: str) -> bool:
    """Whether a line says something beside its greeting, in a sentence of its own («got it. do both go in one tub»)."""
    parts = [part for part in re.split(r"(?<=[.;!?]) ", text) if not _GREET.search(part) and not _THANKED.match(part)]
    return any(is_question(part) or len(part.split()) >= BEYOND for part in parts)


def greeting(text: str) -> Greet:
    """A greeting, thanks or a nod, whichever wants an answer most."""
    return Greet("thanks" if _THANKS.search(text) else "hello" if _HELLO.search(text) else "nod")
