"""What the keeper of the bot reads in the chat: how it goes, in counts, and nothing of what anybody said."""

from collections.abc import Sequence
from datetime import datetime, timedelta

from bot.wording.language import say, say_n


def status(up: timedelta, taken: int, sent: int, behind: tuple[int, int, timedelta], trouble: str | None) -> str:
    """The state of the bot. `behind` is the replies and reminders that are due and not sent, and the oldest's wait."""
    replies, reminders, late = behind
    waits = say(
        "{replies} and {reminders}",
        replies=say_n("{n} reply", "{n} replies", replies, n=replies),
        reminders=say_n("{n} reminder", "{n} reminders", reminders, n=reminders),
    )
    first = (
        say("Look at the store: the last message was not kept ({trouble}).", trouble=trouble)
        if trouble
        else say("All is kept.")
    )
    lateness = say(", the oldest for {total_seconds} s", total_seconds=f"{late.total_seconds():.0f}") if late else ""
    return say(
        "{first} Up for {span}.\nSince then {taken} taken and {sent} sent.\nDue and not sent yet: {waits}{lateness}.",
        first=first,
        span=_span(up),
        taken=say_n("{n} message", "{n} messages", taken, n=taken),
        sent=sent,
        waits=waits,
        lateness=lateness,
    )


def wronged(found: Sequence[tuple[datetime, str, str]]) -> str:
    """The answers that were called wrong, each with when, its name and the question, the newest first."""
    if not found:
        return say("Nobody called an answer wrong.")
    lines = [f"{at:%Y-%m-%d} {answer}: {question or '-'}" for at, answer, question in found]
    return "\n".join([say("Mend these entries, then say «bot mended»:"), *lines])


def mended(count: int) -> str:
    """The list is empty again."""
    return say_n("{n} question is taken off the list.", "{n} questions are taken off the list.", count, n=count)


def not_kept() -> str:
    """To whoever said something that the store did not take."""
    return say("Not kept yet: my store takes nothing just now. I try again by myself; you need not say it again.")


def store_in_trouble(why: str) -> str:
    """To the keeper, when the store takes nothing."""
    return say(
        "Look at the store: it keeps nothing ({why}). What people say waits at the Bot API, for a day at most.", why=why
    )


def _span(up: timedelta) -> str:
    hours = up // timedelta(hours=1)
    return f"{hours // 24} d {hours % 24} h" if hours >= 24 else f"{hours} h {up // timedelta(minutes=1) % 60} min"
