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
            "First finish or cancel {names}: its reminders run by your clock. Then say «forget me» again.", names=names
        )
    return say("Forgotten. If you write again, we begin as strangers do.")
