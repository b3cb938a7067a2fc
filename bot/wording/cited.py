"""How a source is named to people: its title, its year and how well it is known."""

from bot.wording.language import Words, say
from core.sources import Source

STATUS = Words(
    {
        "CONFIRMED": "confirmed",
        "MEMORY": "memory",
        "PRACTICE": "practice",
        "DERIVED": "derived",
        "TUNED": "tuned",
    }
)


def cite(sources: tuple[Source, ...] | list[Source]) -> str:
    """«Sources: …», each with its year and how well it is known."""
    return say("Sources: {sources}.", sources="; ".join(f"{s.title} ({known(s)})" for s in sources))


def known(source: Source) -> str:
    """«1975, memory», or the status alone where no year is printed."""
    return ", ".join(part for part in (source.year.strip("-"), STATUS[source.status]) if part)
