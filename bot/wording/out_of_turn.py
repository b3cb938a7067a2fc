"""Words for a step that is told out of its turn: what is asked about it, while nothing is noted."""

from datetime import datetime

from bot.intents.intents import Choose, StepDone
from bot.wording import asking, numbers, steps
from bot.wording.language import Words, say
from core.batch.assess import Assessment
from core.plan.steps import Kind, State, Step


def is_it_out(step: Step, a: Assessment) -> tuple[str, asking.Rows]:
    """A step after the cure, told long before the plan has it out: whether it is out is asked, and nothing noted."""
    out = a.plan.step("out") if a.plan else None
    text = say(
        "Is it out of the cure already? The plan has it in until {when}, and «{name}» comes after that.\n"
        "Tap it if it is out for good, and what you said is noted with it. If it goes on, nothing changes.",
        when=numbers.when(out.due, a.person, a.now) if out else "",
        name=steps.name(step, a),
    )
    return text, ((asking.button(say("Out of the cure: done"), StepDone("out", batch=a.batch.id)),),)


def is_it_lit(step: Step, a: Assessment) -> tuple[str, asking.Rows]:
    """A fire told of days before its time: whether it is for this piece is asked, and nothing noted."""
    text = say(
        "Is that fire for this piece? By the plan it is lit {when}.\nTap it only if it cooks now; a fire for something else I need not know.",
        when=numbers.when(step.due, a.person, a.now),
    )
    lit = asking.button(say("It cooks now: lit"), StepDone(step.key, batch=a.batch.id))
    return text, ((lit, asking.button(say("For something else"), Choose("keep", True, a.batch.id))),)


def out_already(a: Assessment) -> str:
    """A flip that is told of a time when it was out of the cure: it changes nothing, and is not noted."""
    return say(
        "It came out of the cure {when}, so no flip is noted after that. For an earlier one type its day, like «flipped wed 8:00».",
        when=numbers.when(a.batch.done["out"], a.person, a.now),
    )


def not_in_yet(a: Assessment) -> tuple[str, asking.Rows]:
    """What is only done to meat in its cure, said of meat that is not in it: its days would be counted wrong."""
    into = say("Meat into the cure: done")
    text = say(
        "When did the meat go into the cure? I have not heard that it is in, so I count no day of it.\n"
        "Type it like «in the cure since yesterday 19:00», or tap if it went in just now."
    )
    return text, ((asking.button(into, StepDone("into_cure", batch=a.batch.id)),),)


def out_of_order(step: Step, at: datetime, before: tuple[str, datetime], a: Assessment) -> tuple[str, asking.Rows]:
    """A time that cannot be, since what comes before it in the week was done later; that it was now is one tap."""
    name, done_at = before
    said, was = numbers.when(at, a.person, a.now), numbers.when(done_at, a.person, a.now)
    text = say(
        "When was «{name}»? I read {said}, and that is before «{name_of}», {was}.\n"
        "Type it with its day and hour, like «{examples}».",
        name=steps.name(step, a),
        said=said,
        name_of=steps.name_of(name),
        was=was,
        examples=EXAMPLES[step.kind],
    )
    if step.kind is Kind.INTO_CURE:
        text += " " + say("If the brine is older, type that, like «brine was made at 6:00».")
    just = asking.button(say("{name}: now", name=steps.name(step, a)), StepDone(step.key, batch=a.batch.id))
    return text, () if step.state is State.DONE else ((just,),)


EXAMPLES = Words(
    {
        Kind.INTO_CURE: "meat in the cure today at 19:05",
        Kind.OUT: "out of the cure today at 17:05",
        Kind.MEAT_ON: "meat on today at 07:20",
        Kind.OFF: "off the fire today at 16:20",
        Kind.CHILL: "in the chill today at 18:30",
        Kind.SLICE: "sliced today at 11:00",
    }
)
