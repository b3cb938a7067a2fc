"""Where a batch stands: which day it is, since when, when it comes out, and when a step is due or was done."""

from datetime import datetime, timedelta

from bot.wording import lateness, numbers, plans, put_in, steps
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.plan.steps import Kind, State, Step

A_DAY = timedelta(days=1)
HALF_AN_HOUR = timedelta(minutes=30)  # of an example
WAY = frozenset(
    {Kind.BRINE, Kind.BRINE_CHECK, Kind.INTO_CURE, Kind.OUT, Kind.DRY, Kind.LIGHT, Kind.MEAT_ON, Kind.THAW, Kind.SERVE}
)  # from the first deed to the table


def day(a: Assessment) -> str:
    """«Day 4 of 6.5 in the cure»; before and after it, what came last and what comes."""
    into = a.batch.done.get("into_cure")
    if into is None or "out" in a.batch.done or a.plan is None:
        return since(a)
    out = a.plan.step("out")
    if out is not None and out.due <= a.now:
        return say(
            "Day {day} in the cure. By the plan it was to come out {out}, so take it out now. Kept cold, the rest did no harm.",
            day=int((a.now - into) / A_DAY) + 1,
            out=numbers.when(out.due, a.person, a.now),
        )
    if out is None:
        return since(a)
    return say(
        "Day {day} in the cure, of {days}.\nIt went in {into}, and comes out {out}, in {left}.",
        day=int((a.now - into) / A_DAY) + 1,
        days=numbers.lying(a.plan.cure_days),
        left=numbers.span(out.due - a.now),
        into=numbers.when(into, a.person, a.now),
        out=numbers.when(out.due, a.person, a.now),
    )


def out(a: Assessment) -> str:
    """When it comes out of the cure, and how pink such pieces are by then."""
    done = a.batch.done.get("out")
    if done is not None:
        return say("It came out {when}.", when=numbers.when(done, a.person, a.now)) + f" {plans.coming(a)}"
    step = a.plan.step("out") if a.plan else None
    if step is None or a.plan is None:
        return plans.now(a)
    after = a.after_cure()
    pink = (
        say(
            "By then {chance} of pieces like this are pink in the middle.",
            chance=numbers.chance(after.probability_pink),
        )
        if after is not None and not put_in.too_weak(a)
        else ""
    )
    left = step.due - a.now
    if left <= timedelta(0):
        return say(
            "It may come out now: the cure wanted {days}. {pink}", days=numbers.lying(a.plan.cure_days), pink=pink
        ).strip()
    return say(
        "It comes out {when}, in {left}: {days} in the cure.\n{pink}",
        when=numbers.when(step.due, a.person, a.now),
        left=numbers.span(left),
        days=numbers.lying(a.plan.cure_days),
        pink=pink,
    ).strip()


def since(a: Assessment) -> str:
    """How long it has been where it is, and since when; what came before it in a line of its own."""
    told = [line for line in (_after_the_fire(a), _on_the_fire(a), _in_the_cure(a)) if line]
    return "\n".join(told) if told else say("It is not in the cure yet. {next}", next=plans.coming(a)).strip()


def _in_the_cure(a: Assessment) -> str:
    into, out_at = a.batch.done.get("into_cure"), a.batch.done.get("out")
    if into is None:
        return ""
    if out_at is not None:
        return say("It was in the cure for {span}.", span=numbers.span(out_at - into))
    return say(
        "In the cure {span}, since {when}; it comes out {out}.",
        span=numbers.span(a.now - into),
        when=numbers.when(into, a.person, a.now),
        out=_due("out", a),
    )


def _on_the_fire(a: Assessment) -> str:
    on, off = a.on_at, a.batch.off_at
    if on is None:
        return ""
    if off is not None:
        return say("It was on the fire for {span}.", span=numbers.span(off - on))
    return _so_long(say("On the fire {span}, since {when}."), on, a)


def _after_the_fire(a: Assessment) -> str:
    sliced, chill = a.batch.done.get("slice"), a.batch.done.get("chill")
    if sliced is not None:
        return say("Sliced {when}.", when=numbers.when(sliced, a.person, a.now))
    if chill is not None:
        return _so_long(say("In the chill {span}, since {when}."), chill, a)
    return "" if a.batch.off_at is None else _so_long(say("Off the fire {span}, since {when}."), a.batch.off_at, a)


def _so_long(words: str, at: datetime, a: Assessment) -> str:
    return words.format(span=numbers.span(a.now - at), when=numbers.when(at, a.person, a.now))


def of_step(kind: Kind, a: Assessment) -> str:
    """When one step of the plan is due, or was done; what stands before it where it is no part of this plan."""
    found = a.plan.of_kind(kind) if a.plan else ()
    if not found:
        return plans.now(a)
    step = next((s for s in found if s.state in (State.DUE, State.AHEAD)), found[-1])
    return f"{_stands(step, a)}\n{_estimated(step, a)}".strip()


def _stands(step: Step, a: Assessment) -> str:
    name = steps.name(step, a)
    match step.state:
        case State.DONE if step.done_at is not None:
            return say("{name}: done {when}.", name=name, when=numbers.when(step.done_at, a.person, a.now))
        case State.DUE:
            return say("{name}: now.", name=name)
        case State.SKIPPED:
            return say("{name}: left out.", name=name)
        case _:
            in_ = numbers.span(step.due - a.now)
            return say("{name}: {when}, in {span}.", name=name, when=numbers.when(step.due, a.person, a.now), span=in_)


def _estimated(step: Step, a: Assessment) -> str:
    """The band of a time that is an estimate, and what is to be done before it."""
    if step.state not in (State.DUE, State.AHEAD):
        return ""
    if step.early is not None and step.late is not None:
        early, late = (numbers.when(moment, a.person, a.now) for moment in (step.early, step.late))
        return say("Nine in ten come between {early} and {late}.", early=early, late=late)
    coming = plans.coming(a)
    return "" if steps.name(step, a) in coming else coming


def left(a: Assessment) -> str:
    """Every step that is still to be done, with its time; the flips in one line."""
    lines = to_do(a)
    return say("Still to do, each first time:\n{lines}", lines="\n".join(lines)) if lines else plans.now(a)


def to_do(a: Assessment) -> list[str]:
    """The steps that are still to be done, each kind once, with its time."""
    waiting = [s for s in a.plan.steps if s.state in (State.DUE, State.AHEAD)] if a.plan else []
    once = [s for n, s in enumerate(waiting) if all(s.kind is not before.kind for before in waiting[:n])]
    return [f"{numbers.when(s.due, a.person, a.now)} {steps.name(s, a)}" for s in sorted(once, key=lambda s: s.due)]


def on_that_day(a: Assessment, day: datetime) -> list[str]:
    """What is to be done on one day, in order."""
    wanted = day.astimezone(a.person.tz).date()
    open_ones = [s for s in a.plan.steps if s.state in (State.DUE, State.AHEAD)] if a.plan else []
    there = [s for s in open_ones if s.due.astimezone(a.person.tz).date() == wanted]
    listed = [f"{numbers.when(s.due, a.person, a.now)} {steps.name(s, a)}" for s in sorted(there, key=lambda s: s.due)]
    return [*listed, plans.coming(a)] if listed else []


def begin(a: Assessment) -> str:
    """When to begin: while nothing is in its cure the way to the fire, later the fire, and the table."""
    if a.batch.phase is Phase.WAITING:
        ahead = [s for s in a.plan.steps if s.state in (State.DUE, State.AHEAD) and s.kind in WAY] if a.plan else []
        into = [_stands(s, a) for s in ahead if s.kind is Kind.INTO_CURE]
        listed = [f"{numbers.when(s.due, a.person, a.now)} {steps.name(s, a)}" for s in ahead]
        return "\n".join([*into, *listed, plans.coming(a)]) if listed else plans.now(a)
    return of_step(Kind.LIGHT, a) if a.batch.phase in (Phase.CURING, Phase.DRYING) else since(a)


def meal(a: Assessment) -> str:
    """When the meal is, as it was wanted or as it can be had."""
    if a.plan is None:
        return plans.now(a)
    lead = say("The meal is {serve}.", serve=numbers.when(a.plan.serve, a.person, a.now))
    return "\n".join([lead, *(lateness.late(a) or [plans.coming(a)])])


def _due(key: str, a: Assessment) -> str:
    step = a.plan.step(key) if a.plan else None
    return numbers.when(step.due, a.person, a.now) if step is not None else say("as the plan says")
