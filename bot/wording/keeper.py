"""What the keeper of the bot reads in the chat: how it goes, in counts, and nothing of what anybody said."""

from datetime import timedelta


def status(up: timedelta, taken: int, sent: int, behind: tuple[int, int, timedelta], trouble: str | None) -> str:
    """The state of the bot. `behind` is the replies and reminders that are due and not sent, and the oldest's wait."""
    replies, reminders, late = behind
    waits = f"{replies} {_plural('reply', 'replies', replies)} and {reminders} {_plural('reminder', 'reminders', reminders)}"
    first = f"Look at the store: the last message was not kept ({trouble})." if trouble else "All is kept."
    lateness = f", the oldest for {late.total_seconds():.0f} s" if late else ""
    return (
        f"{first} Up for {_span(up)}.\n"
        f"Since then {taken} {_plural('message', 'messages', taken)} taken and {sent} sent.\n"
        f"Due and not sent yet: {waits}{lateness}."
    )


def not_kept() -> str:
    """To whoever said something that the store did not take."""
    return "Not kept yet: my store takes nothing just now. I try again by myself; you need not say it again."


def store_in_trouble(why: str) -> str:
    """To the keeper, when the store takes nothing."""
    return f"Look at the store: it keeps nothing ({why}). What people say waits at the Bot API, for a day at most."


def _span(up: timedelta) -> str:
    hours = up // timedelta(hours=1)
    return f"{hours // 24} d {hours % 24} h" if hours >= 24 else f"{hours} h {up // timedelta(minutes=1) % 60} min"


def _plural(one: str, many: str, count: int) -> str:
    return one if count == 1 else many
