"""Answers about the trade: the entry, its cautions, what more there is, where it comes from; and what may be meant."""

import re
from collections.abc import Sequence

from bot.intents.intents import Choose
from bot.reply import Button
from bot.wording import answers, cautions, language
from bot.wording.asking import Rows, button
from bot.wording.language import say
from core.answers.entries import Entry, ways
from core.person import Person
from core.safety.cautions import caution

LONGEST_LABEL = 40
_SENTENCE = re.compile(r"(?<=[.?]) +")


def short(e: Entry, person: Person) -> tuple[str, Rows]:
    """The short answer with the cautions that belong to it, and taps for the rest."""
    text = "\n".join([glance(language.entry(e.short)), *cautions.lines(caution(name) for name in e.cautions)])
    more = (button(say("More"), Choose("more", e.id)),) if e.more else ()
    why = (button(say("Why"), Choose("sources", e.id)),) if e.sources else ()
    return text, ((*more, *why, wrong(e.id)),)


def longer(e: Entry) -> str:
    """The longer part of an answer."""
    return glance(language.entry(e.more))


def wrong(answer: str) -> Button:
    """The tap that keeps a question for whoever mends the answers."""
    return button(say("Wrong"), Choose("wrong", answer))


def wronged() -> str:
    """An answer was called wrong."""
    return say(
        "Thank you: the question is kept for the keeper of this bot, without your name. Until then, doubt my answer."
    )


def no_reason() -> str:
    """Nothing was claimed."""
    return say("I gave no answer that has a reason. Ask it in other words, or ask your butcher.")


def glance(text: str) -> str:
    """A text with its first sentence on a line of its own: what a lock screen shows."""
    return "\n".join(_SENTENCE.split(text, maxsplit=1))


def sources(e: Entry) -> str:
    """Where an answer comes from, and how well each source is known."""
    return answers.cite(list(e.sources))


def perhaps(offered: Sequence[Entry]) -> tuple[str, Rows]:
    """A question that may mean one of a few."""
    return say("I am not sure which you mean. Tap one, or ask in other words."), _to_tap(offered)


def guessed(likeliest: Entry, others: Sequence[Entry], person: Person) -> tuple[str, Rows]:
    """The answer to what is most likely meant, which is named, and the others that may be meant."""
    text, rows = short(likeliest, person)
    return say("Perhaps you mean: {question}", question=_asked(likeliest)) + "\n" + text, (*rows, *_to_tap(others))


def _to_tap(offered: Sequence[Entry]) -> Rows:
    return tuple((button(_label(e), Choose("entry", e.id)),) for e in offered)


def _asked(e: Entry) -> str:
    asked = ways(e.id, language.spoken())[0]
    return f"{asked[0].upper()}{asked[1:]}?"


def _label(e: Entry) -> str:
    whole = _asked(e)
    return whole if len(whole) <= LONGEST_LABEL else f"{whole[: LONGEST_LABEL - 1]}…"
