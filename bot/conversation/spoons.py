"""A dose that was put in by the spoon: what it may weigh, and what the law says of both ends of it."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from bot import measures
from bot.conversation import curing
from bot.conversation.understand import Understood
from bot.facts import facts
from bot.intents.figured import figured
from bot.intents.normal import normal
from bot.reply import Reply
from bot.wording import mends, put_in
from bot.wording.curing import NOT_OVER
from core import patterns as re
from core.cure.dose import from_teaspoons
from core.cure.judgement import judge
from core.service import batches
from core.service.turn import Turn

FIELD: Final = "put_in_cure"
_OF_CURE: Final = re.compile(r"\b(?:cure|curing|pink)\b")


def by_spoon(turn: Turn, meant: Understood, text: str) -> Sequence[Reply]:
    """What so many level spoons of curing salt come to in the batch in hand; nothing where no spoon is told.

    A spoon is no scale, so what is in is not known from then on; the heavy end is noted where even the
    light one is over the limit.
    """
    a, line = meant.a, figured(normal(text, turn.person.language))
    told = [m for m in measures.find(line) if m.unit in ("tsp", "tbsp")]
    if a is None or a.dose is None or a.dose.limit is None or len(told) != 1 or not _OF_CURE.search(line):
        return ()
    pieces = a.batch.setup.pieces if line.endswith("each") else 1
    spoons = pieces * measures.from_house(told[0].value, "tsp")
    light, heavy = from_teaspoons(spoons)
    found = [judge(replace(a.dose, cure_kg=cure), curing.hours_in(a)) for cure in (light, heavy)]
    over = found[0].verdict not in NOT_OVER
    noted = batches.change(turn, a.batch.id, {FIELD: heavy if over else None})
    after = mends.changed(noted, {FIELD: heavy}) if over else put_in.unknown()
    said = "\n".join((put_in.by_spoon((light, heavy), (found[0], found[1])), after))
    return (Reply(said, facts=facts(noted.after), about=a.batch.id),)
