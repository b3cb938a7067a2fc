"""Words for what is kept of a person, and for forgetting it."""

from bot.intents.intents import Choose
from bot.wording import asking
from bot.wording.language import say


def sure() -> tuple[str, asking.Rows]:
    """Asked before a person is forgotten: what goes, what stays, and why."""
    row = (
        asking.button(say("Forget me"), Choose("forget", True)),
        asking.button(say("Keep it"), Choose("forget", False)),
    )
    text = say(
        "Shall I forget you? Your name, settings and what your slices taught me go at once.\n"
        "The log of a batch stays with its chat, under a number and without your name: whoever eats of it needs its record. "
        "What I said here is gone from my side after 30 days."
    )
    return text, (row,)


def forgotten(open_ones: tuple[str, ...]) -> str:
    """Forgotten, or what has to end first."""
    if open_ones:
        names = ", ".join(f"«{name}»" for name in open_ones)
        return say(
            "First finish or cancel {names}, whose reminders run by your clock. Then say «forget me» again.",
            names=names,
        )
    return say("Forgotten. If you write again, we begin as strangers do.")


def exported() -> str:
    """What stands under the file with everything that is kept of a person."""
    return say(
        "Here is everything that I keep of you, as one file: settings, what your slices taught me, and what you said of each batch.\n"
        "What others said in a batch is theirs and is only counted. «forget me» forgets you."
    )


def what_is_in_it() -> str:
    """The first line of that file."""
    return say(
        "Everything that is kept of you. What others said in a batch is counted and not shown; words of the bot that may quote "
        "them are left out. Times are UTC."
    )


def not_in_a_group() -> str:
    """Asked where others read along."""
    return say(
        "Ask me that in our private chat: here everybody would read it. Open a chat with me and say «export my data»."
    )


def not_taken() -> str:
    """Where the channel cannot take the file."""
    return say("The file did not go through here. Whoever runs this bot can give it to you.")
