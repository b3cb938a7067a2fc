"""Words for looking back: what the slice showed, and what the next plan takes from it."""

from typing import Any

from bot.intents.intents import Choose
from bot.wording import asking, meats, numbers
from bot.wording.language import decimal, later, point, say, say_n
from core.batch.assess import Assessment, Change
from core.person import Person


def thanks(change: Change, person: Person) -> tuple[str, asking.Rows]:
    """What was kept, what it teaches, and the next of the three questions."""
    a = change.after
    old = change.before.batch if change.before else None
    if a.batch.sliced is not None and a.batch.sliced.grey is None and not a.ledger.thrown:
        return _unmeasured(asked=old is not None and old.sliced == a.batch.sliced), ()
    said = (
        (rated(a), "rated"),
        (_slice(a), "sliced"),
        (_yield(a), "weighed_after"),
        (_salt(a), "tasted"),
        (_took(a), "took"),
    )
    lines = [text for text, field in said if old is None or getattr(old, field) != getattr(a.batch, field)]
    lines.append(
        _taught(change, person) if lines else say("Thank you. The next one learns from slice, salt and weight.")
    )
    question, rows = asked(a)
    return "\n".join(t for t in (*lines, question) if t), rows


def rated(a: Assessment) -> str:
    """The mark that the cook gave it."""
    if a.batch.rated is None:
        return ""
    mark = a.batch.rated[1]
    return say("{mark} of {of}: noted with this batch.", mark=numbers.plain(mark.mark), of=numbers.plain(mark.of))


def marked(a: Assessment) -> str:
    """The mark with the words in which it was told, as a log has it."""
    if a.batch.rated is None:
        return ""
    mark = a.batch.rated[1]
    words = f" («{mark.words}»)" if mark.words else ""
    return say("mark: {mark} of {of}", mark=numbers.plain(mark.mark), of=numbers.plain(mark.of)) + words


def _unmeasured(*, asked: bool) -> str:
    """Grey of which the width is not known: what it counts as, and the question for the width, once."""
    counts = say(
        "Grey in the middle: noted. It took no cure there: cooked through it is judged by the stricter rules, "
        "and keeps as a roast does."
    )
    if asked:
        return counts
    width = say(
        "How wide is the grey at its widest, and how thick the slice? Type it, like «grey 12 mm in the middle of 48»."
    )
    return f"{counts}\n{width}"


def _slice(a: Assessment) -> str:
    sliced = a.batch.sliced
    if sliced is None:
        return ""
    if sliced.pink:
        return say("Pink all through: noted.")
    if sliced.grey is None:
        return say("Grey in the middle: noted.")
    if a.ledger.thrown:
        return say("Grey {grey} in the middle: noted.", grey=numbers.length(sliced.grey, a.person))
    of = say(" of {of}", of=numbers.length(sliced.of, a.person)) if sliced.of else ""
    return say(
        "Grey {grey}{of} in the middle: noted.\nIt is safe to eat if it was cooked and "
        "cooled as the rules say; the grey part was simply not reached by the cure.",
        grey=numbers.length(sliced.grey, a.person),
        of=of,
    )


def _yield(a: Assessment) -> str:
    after = a.batch.weighed_after
    if after is None:
        return ""
    return say("Yield {after} % of the green weight.", after=f"{after / a.batch.setup.mass * 100:.0f}")


def _took(a: Assessment) -> str:
    """The hours on the fire beside what was expected of it before the fire, and beside the record's own."""
    if a.batch.took is None:
        return ""
    told = say("{hours} on the fire: noted.", hours=numbers.hours(a.batch.took))
    expected = ""
    if a.cook is not None:
        low, middle, high = (
            numbers.plain(numbers.half(h)) for h in (a.cook.ready.p10, a.cook.ready.p50, a.cook.ready.p90)
        )
        sentence = " Before the fire I expected {low} to {high} h, {middle} h in the middle."
        expected = say(sentence, low=low, middle=middle, high=high)
    return told + expected


def _salt(a: Assessment) -> str:
    return (
        {1: say("Too salty: noted."), -1: say("Bland: noted."), 0: say("Salt just right: noted.")}.get(
            a.batch.tasted or 0, ""
        )
        if a.batch.tasted is not None
        else ""
    )


def _taught(change: Change, person: Person) -> str:
    learned = change.after.person.learned
    if learned.batches == 0 or (change.before is not None and change.before.person.learned == learned):
        return ""
    factor = 2.718281828 ** (-learned.diffusivity_log_shift)
    days = (
        say("{factor} times the usual days", factor=decimal(factor, 2))
        if abs(factor - 1) > 0.03
        else say("the usual days")
    )
    salt = ""
    if abs(learned.salt_shift) > 1e-4:
        points = point(f"{abs(learned.salt_shift) * 100:.2f}".rstrip("0"))
        more = learned.salt_shift > 0
        sentence = (
            later(", {points} percentage points more salt") if more else later(", {points} percentage points less salt")
        )
        salt = say(sentence, points=points)
    return say_n(
        "Your next plan starts from this: {days}{salt} (from {batches} batch).",
        "Your next plan starts from this: {days}{salt} (from {batches} batches).",
        learned.batches,
        days=days,
        salt=salt,
        batches=learned.batches,
    )


def asked(a: Assessment) -> tuple[str, asking.Rows]:
    """The first of the three questions that is still open, with its taps."""
    batch = a.batch.id
    slot = next_slot(a)
    if slot == "grey":
        text = say("What did the slice show? Type the grey in the middle, like «grey 12 mm in the middle of 48».")
        if a.batch.tasted is None and a.batch.weighed_after is None:
            weight = "4.6 lb" if a.person.units.mass == "lb" else "2.1 kg"
            text += "\n" + say(
                "Salt and weight fit in the same line, like «pink all through, salt just right, {weight}».",
                weight=weight,
            )
        return (
            text,
            ((asking.button(say("Pink all through"), Choose("grey", 0.0, batch)),),),
        )
    if slot == "salty":
        row = (
            asking.button(say("Too salty"), Choose("salty", 1, batch)),
            asking.button(say("Just right"), Choose("salty", 0, batch)),
            asking.button(say("Bland"), Choose("salty", -1, batch)),
        )
        text = say("How was the salt?") if meats.plain(a) else say("And the salt?")
        return text, (row,)
    if slot == "weight_after":
        return say("What does it weigh now? Type it with its unit, or leave it."), ()
    return say("That is all I need. Thank you."), ()


def next_slot(a: Assessment) -> str | None:
    """The first of the three questions that is still open."""
    batch = a.batch
    grey = None if batch.sliced is None else batch.sliced.grey
    cured = () if meats.plain(a) else (("grey", grey),)  # what is only salted has no middle to be reached
    open_ones = (*cured, ("salty", batch.tasted), ("weight_after", batch.weighed_after))
    return next((slot for slot, known in open_ones if known is None), None)


def next_question(a: Assessment) -> dict[str, Any] | None:
    """The open question to be kept with the person."""
    slot = next_slot(a)
    return {"slot": slot, "batch": a.batch.id} if slot else None
