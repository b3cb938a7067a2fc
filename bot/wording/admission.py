"""Words at the door of the bot."""

from datetime import datetime

from bot.wording import general, numbers
from bot.wording.language import say
from core.person import Person


def private(number: str) -> str:
    """To a stranger, where only some are let in: what to say, and the number that whoever runs the bot may ask for."""
    return say(
        "This bot is private. Send me the code that you were given, and nothing else with it.\n"
        "Without a code, ask whoever runs it to let you in; your number here is {number}.",
        number=number,
    )


def welcome(person: Person) -> str:
    """The code was right."""
    return say("Come in, the code is right. {hello}", hello=general.hello(person, None))


def full() -> str:
    """No new chat is taken in today."""
    return say("I cannot take in anybody new today, there are too many. Please write again tomorrow.")


def enough(person: Person, again: datetime, now: datetime) -> str:
    """As many messages came from this chat today as are taken."""
    return say(
        "That is all that I can take from this chat today; I listen again {when}. Reminders still come, and nothing is lost.",
        when=numbers.when(again, person, now),
    )
