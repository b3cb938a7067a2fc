"""Words for the flips of a cure: the next, the last, how many, and those that passed."""

from datetime import datetime, timedelta

from bot.wording import numbers, plans, steps
from bot.wording.language import say, say_n
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.plan.steps import Kind, State, Step

A_DAY = timedelta(days=1)
HALF_AN_HOUR = timedelta(minutes=30)  # of an example


def flip_next(a: Assessment) -> str:
    """When to turn it next, and when it was turned last."""
    waiting = [s for s in flips(a) if s.state in (State.DUE, State.AHEAD)]
    last = last_flip(a)
    before = say("Last {when}.", when=numbers.when(last.done_at, a.person, a.now)) if last and last.done_at else ""
    if a.plan is None:
        return say(
            "Turn it whenever you see it; I remind you of it as soon as there is a plan. {before}", before=before
        ).strip()
    if not waiting:
        return say("No flip is left. {before} {next}", before=before, next=plans.coming(a)).replace("  ", " ")
    first = waiting[0]
    due = numbers.when(first.due, a.person, a.now)
    lead = (
        say("Flip it now. {before}", before=before)
        if first.state is State.DUE
        else say(
            "Flip it next: {due}, in {left}. {before}", due=due, left=numbers.span(first.due - a.now), before=before
        )
    ).strip()
    return f"{lead}\n{say('Missing one does no harm: once a day is enough.')}"


def flips_sooner(a: Assessment) -> str:
    """How flips are called for at other hours, with those of somebody who wants them half an hour sooner."""
    sooner = (datetime.combine(a.now, hour) - HALF_AN_HOUR for hour in a.person.flip_hours)
    hours = say(" and ").join(f"{hour:%H:%M}" for hour in sooner)
    return say("To be called sooner every day, type it like «flips at {hours}».", hours=hours) if hours else ""


def flip_last(a: Assessment, who: str) -> str:
    """When it was turned last and by whom, as far as that was said."""
    last = last_flip(a)
    if last is None or last.done_at is None:
        return say("No flip is noted yet. {next}", next=flip_next(a) if flips(a) else plans.coming(a))
    when = numbers.when(last.done_at, a.person, a.now)
    lead = say("Last flipped {when}, by {who}.", when=when, who=who) if who else say("Last flipped {when}.", when=when)
    return f"{lead} {_next_flip(a)}".strip()


def flips_done(a: Assessment) -> str:
    """How many flips were done, and how many are left."""
    done, ahead = len(flipped(a)), sum(s.state in (State.AHEAD, State.DUE) for s in flips(a))
    if not done and ahead:
        clocks = say(" and ").join(f"{t:%H:%M}" for t in a.person.flip_hours)
        return say(
            "{ahead} are planned, at {clocks} each day; none is noted yet. {next}",
            ahead=ahead,
            clocks=clocks,
            next=flip_next(a),
        )
    lead = say_n("{n} flip is noted", "{n} flips are noted", done, n=done)
    return say("{lead}; {ahead} are still planned. {last}", lead=lead, ahead=ahead, last=flip_last(a, ""))


def _next_flip(a: Assessment) -> str:
    first = next((s for s in flips(a) if s.state in (State.DUE, State.AHEAD)), None)
    if first is None:
        return plans.coming(a)
    due = say("now") if first.state is State.DUE else numbers.when(first.due, a.person, a.now)
    return say("Next: {name}, {due}.", name=steps.name(first, a), due=due)


def flips(a: Assessment) -> tuple[Step, ...]:
    """The flips of the plan, in order."""
    return a.plan.of_kind(Kind.FLIP) if a.plan else ()


def last_flip(a: Assessment) -> Step | None:
    """The flip that was done last, one of no hour of the plan included."""
    done = [Step(key, Kind.FLIP, at, state=State.DONE, done_at=at) for key, at in flipped(a)]
    return max(done, key=lambda s: s.due, default=None)


def flipped(a: Assessment) -> list[tuple[str, datetime]]:
    """Every flip that was done, with its time, whatever hour it was planned for."""
    return [(key, at) for key, at in a.batch.done.items() if key.split("/")[0] == Kind.FLIP]


def missed(a: Assessment) -> str:
    """How many flips passed without a word, and that it does no harm; other steps that are open."""
    passed = [s for s in flips(a) if s.state is State.SKIPPED or (s.state is State.DUE and s.due < a.now - A_DAY / 4)]
    if not passed:
        return say(
            "You missed nothing that I know of, and a flip some hours late does no harm. {next}", next=plans.coming(a)
        ).strip()
    last = numbers.when(passed[-1].due, a.person, a.now)
    return say_n(
        "{n} flip passed, {last}. That does no harm: press the liquid around the meat, turn it now and go on.\n{next}",
        "{n} flips passed, the last {last}. That does no harm: press the liquid around the meat, turn it now and go on.\n{next}",
        len(passed),
        n=len(passed),
        last=last,
        next=plans.coming(a),
    )


def none_missed(a: Assessment) -> str:
    """Nothing was open on the day that is said to be forgotten."""
    if a.batch.phase is Phase.CURING:
        return say(
            "Nothing was open then, and a missed flip does no harm: turn it whenever you are there. {coming}",
            coming=plans.coming(a),
        ).strip()
    return say("Nothing was open then. {coming}", coming=plans.coming(a)).strip()


def skip_flip(a: Assessment) -> str:
    """Whether the next flip may be left out."""
    waiting = [s for s in flips(a) if s.state in (State.DUE, State.AHEAD)]
    if not waiting or "out" in a.batch.done or a.batch.phase is not Phase.CURING:
        return say("No flip is due now. {next}", next=plans.coming(a)).strip()
    after = [s for s in waiting[1:] if s.due > waiting[0].due]
    then = say("The one after it is {when}.", when=numbers.when(after[0].due, a.person, a.now)) if after else ""
    return say(
        "It may be left out: missing one does no harm, once a day is enough. {then}\n"
        "Say «skip it». What may not wait is the fridge: {limit} or below.",
        then=then,
        limit=numbers.both(4.4, a.person),
    )
