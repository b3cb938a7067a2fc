"""The language of somebody who never said one: that of the last line which is plainly in one that is spoken here."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final

from bot.intents.rewriting.tongue import given_away
from bot.intents.zones import law_of
from bot.reply import Message, Reply
from bot.wording import general, language
from core.person import Person
from core.service import people
from core.service.turn import Turn

LAWS: Final = {"de": "EU"}  # the law where most speak it; stricter than that of the US


def answered(turn: Turn, message: Message, answer: Callable[[Turn, Message], Sequence[Reply]]) -> Sequence[Reply]:
    """What a message is answered with, in the language that it gives away; that it is so is said once."""
    code = "" if turn.person.language_known else given_away(message.text)
    if code not in language.OFFERED or code == language.spoken():
        return answer(turn, message)
    people.change(turn, {"language": code, **_law(turn.person, code)})
    language.speak(code)
    replies = list(answer(turn, message))
    if replies and turn.person.language == code:
        replies[-1] = replace(replies[-1], text=f"{replies[-1].text}\n{general.in_your_language()}")
    return replies


def _law(person: Person, code: str) -> dict[str, str]:
    """A first guess of the law by the zone, else by the language, while none was said; every plan names it."""
    law = law_of(person.zone) if person.zone_known else LAWS.get(code)
    return {"jurisdiction": law} if law and person.jurisdiction == Person.jurisdiction else {}
