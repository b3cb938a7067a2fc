"""How a line was taken that left something open: said at once, with the other reading one tap away."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any, Final

from bot import measures
from bot.intents.intents import Change, Choose, MoveDeadline
from bot.intents.weights import HEAVIEST_KG
from bot.reply import Reply
from bot.wording import meat_names, meats, numbers, plans
from bot.wording.asking import Rows, button
from bot.wording.language import say
from core.batch.assess import Assessment
from core.person import Person
from core.plan.hours import wall_of

WEEK: Final = timedelta(days=7)


def taken(a: Assessment, assumed: Collection[str]) -> tuple[list[str], Rows]:
    """Sentences and taps for what was completed by a usual value (see `Start.assumed`); none where all was said."""
    lines, rows = [], []
    if "cut" in assumed:
        lines.append(say("Brisket by itself I take for a flat."))
        rows.append((button(say("It is a point"), Change({"cut": "brisket_point"}, a.batch.id)),))
    if "like_last" in assumed:
        lines.append(say("The cut and its ways are those of your last one; the dose is reckoned for this piece."))
    lines += [sentence for name, sentence in _raw().items() if name in assumed]
    deadline = a.batch.setup.deadline
    if deadline is not None:
        lines += _meal(a, deadline, assumed)
        other = _other_week(a, deadline) if "deadline_next" in assumed else None
        rows += [(button(_label(a, other), MoveDeadline(to=other, batch=a.batch.id)),)] if other else []
    return lines, tuple(rows)


def _raw() -> dict[str, str]:
    """What was taken for raw meat of which the cure is still to be weighed."""
    return {
        "already_in": say(
            "If it lies in the cure already, weigh no second dose: say when it went in, like «in the bag since friday 20:00»."
        ),
        "salmon_trout": say("Salmon trout I plan as salmon: a fillet salts and cooks alike."),
        "gammon": say(
            "Gammon is often sold cured: then no cure goes on it, and this plan is not for it. I took it for raw."
        ),
    }


def which_meal(meals: Sequence[datetime], person: Person, now: datetime) -> tuple[str, Rows]:
    """A date that may be two days: neither is guessed."""
    rows = tuple((button(numbers.when(at, person, now), Choose("deadline", at)),) for at in meals)
    return say("On which day is the meal? What you typed may be either. Tap it; the rest is kept."), rows


WHOLE_BRISKET = frozenset({"packer", "flat and point", "whole brisket"})


def flat_or_point() -> str:
    """A whole brisket: its two muscles are two batches, each with its own weight."""
    return say(
        "A whole brisket is a flat and a point: each has its own days and hours, so cut and weigh them apart.\n"
        "Type both with their weights, like «2.5 kg flat, 1.5 kg point», or one alone; what else you said is kept."
    )


def beside(reply: Reply, *, kept: bool) -> Reply:
    """A question that is asked again, with a word that what was said beside it is `kept`."""
    if not kept or reply.about is not None:
        return reply
    return replace(reply, text="\n".join((reply.text, say("What you said beside it is noted."))))


def noted(a: Assessment) -> str:
    """«Pastrami from a 7.0 lb brisket flat, 2.25 in thick, meal Sat 20 Mar 13:00: noted.»"""
    setup = a.batch.setup
    parts = [meats.what(a)]
    if "thickness" in setup.said:
        parts.append(say("{thick} thick", thick=numbers.length(a.piece.thickness, a.person)))
    parts += [say("still frozen")] if setup.frozen else []
    parts += [words(a) for field, words in (("method", plans.method), ("pit_c", plans.pit)) if field in setup.said]
    if setup.deadline is not None:
        parts.append(say("meal {meal}", meal=numbers.when(setup.deadline, a.person, a.now)))
    if (cure := a.batch.put_in.get("put_in_cure")) is not None:
        parts.append(say("{cure} of curing salt put in", cure=numbers.grams(cure)))
    return say("{what}: noted.", what=", ".join(parts))


def so_far(question: str, said: Mapping[str, Any], person: Person, now: datetime) -> str:
    """The question for the cut or the weight, with what is kept meanwhile; what is frozen thaws first."""
    parts = [meat_names.PRODUCTS[said["product"]]] if said.get("product") in meat_names.PRODUCTS else []
    parts += [numbers.mass(said["mass"], person)] if "mass" in said else []
    parts += [say("{n} pieces", n=f"{said['pieces']}")] if said.get("pieces", 1) > 1 else []
    parts += [say("{thick} thick", thick=numbers.length(said["thickness"], person))] if "thickness" in said else []
    parts += [plans.METHODS[said["method"]]] if said.get("method") in plans.METHODS else []
    parts += [say("meal {meal}", meal=numbers.when(said["deadline"], person, now))] if said.get("deadline") else []
    lines = [question, *([say("{what}: noted.", what=", ".join(parts))] if parts else [])]
    lines += (
        [say("Still frozen: noted. It thaws in the fridge first, before anything is cut or cured.")]
        if said.get("frozen")
        else []
    )
    return "\n".join(lines)


def hot_instead(refusal: str, said: Mapping[str, Any], person: Person, now: datetime) -> tuple[str, Rows]:
    """That nothing is smoked cold here, what is noted of the piece, and the hot way to tap."""
    rows = ((button(say("Plan it hot-smoked"), Choose("hot_instead", "hot")),),)
    return so_far(refusal, said, person, now), rows


def no_last() -> str:
    """«as last time», where there was none."""
    return say("I know of no earlier one of yours to copy, so I ask what it takes.")


def _meal(a: Assessment, deadline: datetime, assumed: Collection[str]) -> list[str]:
    day, clock = numbers.day(deadline, a.person), numbers.clock(deadline, a.person)
    sentences = {
        "deadline_next": say("By «next» I took {day}.", day=day),
        "deadline_hour": say("No hour was said for the meal, so I took {clock}.", clock=clock),
        "deadline_shifted": say(
            "That hour does not come that night, as the clocks go forward; I took {clock}.", clock=clock
        ),
        "deadline_twice": say("That hour comes twice that night, as the clocks go back; I took the first."),
    }
    return [sentence for name, sentence in sentences.items() if name in assumed]


def _other_week(a: Assessment, deadline: datetime) -> datetime | None:
    """The same hour a week later where the nearest day was taken, else a week earlier, if that is still to come."""
    wall = wall_of(a.person)
    away = WEEK if deadline - a.now < WEEK else -WEEK
    other = wall.at(wall.day(deadline) + away, wall.clock(deadline).replace(tzinfo=None))
    return other if other > a.now else None


def _label(a: Assessment, at: datetime) -> str:
    return say("Meal {at}", at=numbers.when(at, a.person, a.now))


def again(slot_name: str, typed: str) -> str:
    """Something that was typed and cannot be, or a weight that may be several: said once, with what to type instead."""
    wanted = {
        "mass": (say("a weight that a piece of meat can have"), say("3.2 kg or 7 lb")),
        "thickness": (say("a thickness that a piece of meat can have"), say("48 mm or 1.9 in")),
        "deadline": (say("a day and an hour that I can read"), say("saturday 13:00")),
    }
    what, example = wanted[slot_name]
    if slot_name == "mass" and any(0.0 < m.value <= HEAVIEST_KG for m in measures.of_kind(typed, "mass")):
        return say(
            "I do not guess one weight from «{typed}».\n"
            "Weigh it and type it like {example}, several pieces each with its own; the rest of what you said is kept.",
            typed=typed,
            example=example,
        )
    return say(
        "«{typed}» is not {what}. Type it like {example}; the rest of what you said is kept.",
        typed=typed,
        what=what,
        example=example,
    )
