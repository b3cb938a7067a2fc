"""The language of somebody who never said one: that of the first line which is plainly in one that is spoken here."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from bot.intents.tongue import given_away
from bot.reply import Message, Reply
from bot.wording import general, language
from core.service.turn import Turn


def answered(turn: Turn, message: Message, answer: Callable[[Turn, Message], Sequence[Reply]]) -> Sequence[Reply]:
    """What a message is answered with, in the language that it gives away; that it is so is said once."""
    code = "" if turn.person.language_known else given_away(message.text)
    if code not in language.OFFERED or code == language.spoken():
        return answer(turn, message)
    turn.keep_person(language=code, language_known=True)
    language.speak(code)
    replies = list(answer(turn, message))
    if replies and turn.person.language == code:
        replies[-1] = replace(replies[-1], text=f"{replies[-1].text}\n{general.in_your_language()}")
    return replies
