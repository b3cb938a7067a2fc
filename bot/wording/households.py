"""Words for a batch that several people have: inviting, joining, leaving, who answers for what, who did what."""

from datetime import datetime

from bot.wording import numbers, plans
from bot.wording.language import Words, say
from core.batch.assess import Assessment
from core.batch.events import Handed

TASKS = Words(
    {"fire": "the fire and the chill", "flips": "flips and fridge", "cure": "weighing the cure", "all": "everything"}
)


def somebody() -> str:
    """Who has no name here."""
    return say("Somebody")


def invitation(a: Assessment, code: str) -> str:
    """What to pass on, for how long it holds, and what it opens."""
    return say(
        "Pass this on: whoever types «join {code}» to me has «{name}» too. It holds once, for 7 days.\n"
        "They get the same reminders and may answer them; the first «done» counts for all.",
        code=code,
        name=a.batch.name,
    )


def joined(a: Assessment, owner: str, taken: Handed | None) -> str:
    """In: what there is to do, and who weighs the cure."""
    with_ = say(" with {owner}", owner=owner) if owner else ""
    lines = [say("You have «{name}»{with_owner} now. {now}", name=a.batch.name, with_owner=with_, now=plans.now(a))]
    if taken is not None and taken.chat:
        lines.append(yours(a, taken))
    lines.append(say("The first «done» counts for all. «who is in» names everybody; «leave» lets go."))
    return "\n".join(lines)


def yours(a: Assessment, taken: Handed) -> str:
    """What who reads this answers for now."""
    return say(
        "You answer for {task} from {since}: its calls come to you; a safety call that nobody answers goes to everybody.",
        task=TASKS[taken.task],
        since=numbers.when(taken.since, a.person, a.now),
    )


def came(name: str, a: Assessment) -> str:
    """To the others: somebody is in."""
    return say("{name} is in on «{batch}» now.", name=name or somebody(), batch=a.batch.name)


def went(name: str, a: Assessment) -> str:
    """To the others: somebody let go."""
    return say(
        "{name} is out of «{batch}»; what they had taken over is everybody's again.",
        name=name or somebody(),
        batch=a.batch.name,
    )


def left(a: Assessment) -> str:
    """To who let go."""
    return say(
        "You are out of «{batch}»: no more calls for it here. An invitation lets you in again.", batch=a.batch.name
    )


def not_left(a: Assessment) -> str:
    """It was begun here."""
    return say(
        "«{batch}» was begun here, so it stays here. «pause» holds its reminders, «cancel» drops it, "
        "«Jo has the fire from 20:00» hands them over.",
        batch=a.batch.name,
    )


def handed(a: Assessment, one: Handed) -> str:
    """Who answers for what from when, echoed."""
    if one.task == "cure":
        return say("Noted: {name} weighs the cure, nobody else does.", name=one.name)
    return say(
        "Noted: {name} answers for {task} from {since}, and the calls go there.\n"
        "A safety call that nobody answers goes to everybody. «I take over» brings them back.",
        name=one.name,
        task=TASKS[one.task],
        since=numbers.when(one.since, a.person, a.now),
    )


def mine(a: Assessment, one: Handed) -> str:
    """Who speaks answers for something from now on, echoed."""
    if one.task == "cure":
        return say("Noted: you weigh the cure, nobody else does.")
    return say(
        "Noted: you answer for {task} from {since}, and the calls come to you.\n"
        "A safety call that nobody answers goes to everybody. «Jo has the fire from 20:00» hands it on.",
        task=TASKS[one.task],
        since=numbers.when(one.since, a.person, a.now),
    )


def reach(name: str, a: Assessment, code: str) -> str:
    """Who cannot be reached yet: the invitation that hands over as soon as it is taken."""
    who = name[:1].upper() + name[1:] if name else say("whoever takes over")
    return say(
        "I cannot reach {who} yet: until they are in, the calls come here. Let them type «join {code}» to me; it holds once, for 7 days.",
        who=who,
        code=code,
    )


def back_from(one: Handed, a: Assessment) -> str:
    """When what was handed over comes back by itself."""
    return say("From {since} on the calls come to you again.", since=numbers.when(one.since, a.person, a.now))


def then(one: Handed, until: datetime | None, a: Assessment) -> str:
    """What is handed over, from when to when, as soon as who takes it is in."""
    if one.task == "cure":
        return say("Then they weigh the cure, and nobody else does.")
    since = numbers.when(one.since, a.person, a.now) if one.since > a.now else ""
    task, end = TASKS[one.task], numbers.when(until, a.person, a.now) if until else ""
    if since and end:
        return say(
            "Then they have {task} from {since} until {end}, and after it the calls come here again.",
            task=task,
            since=since,
            end=end,
        )
    if end:
        return say("Then they have {task} until {end}, and after it the calls come here again.", task=task, end=end)
    if since:
        return say("Then they have {task} from {since} on.", task=task, since=since)
    return say("Then they have {task}.", task=task)


def takes(name: str, one: Handed, a: Assessment) -> str:
    """To the others: somebody has taken over."""
    if one.task == "cure":
        return say("{name} weighs the cure of «{batch}», nobody else does.", name=name, batch=a.batch.name)
    return say(
        "{name} answers for {task} of «{batch}» from {since}.",
        name=name,
        task=TASKS[one.task],
        batch=a.batch.name,
        since=numbers.when(one.since, a.person, a.now),
    )


def who(a: Assessment, names: tuple[str, ...], doser: str) -> str:
    """Everybody who has a batch, who weighs the cure, and who answers for what."""
    listed = ", ".join(names) if names else say("nobody whose name I know")
    lines = [say("In on «{batch}»: {listed}.", batch=a.batch.name, listed=listed)]
    if doser:
        lines.append(say("{doser} weighs the cure.", doser=doser))
    for task in ("fire", "flips", "all"):
        of_task = [one for one in a.batch.handed if one.task == task]
        now = [one for one in of_task if one.since <= a.now][-1:]
        for one in (*now, *(one for one in of_task[-1:] if one.since > a.now)):
            since = numbers.when(one.since, a.person, a.now)
            lines += (
                [say("{name}: {task}, from {since}.", name=one.name, task=TASKS[task], since=since)] if one.name else []
            )
    if len(lines) == 1 and not names:
        lines.append(say("The calls come to you. To hand over, type who and what, like «Jo has the fire from 20:00»."))
    return "\n".join(lines)


def by(name: str) -> str:
    """Who had noted it before."""
    return say("{name} did it.", name=name)


def no_second(at: datetime, name: str, a: Assessment) -> str:
    """The cure is in: a second dose is refused, with who and when."""
    when = numbers.when(at, a.person, a.now)
    return say(
        "The cure is in since {when}, by {name}: weigh no second one. If two went in, say «dosed twice».",
        when=when,
        name=name,
    )


def only_one(name: str) -> str:
    """Before anybody weighs: who does."""
    return say("{name} weighs the cure, nobody else does.", name=name)


def told(name: str, text: str, batch: str) -> str:
    """What somebody said of a batch, to those who have it too."""
    return f"{name} ({batch}): {text}" if name else f"{batch[:1].upper()}{batch[1:]}: {text}"


def no_invitation() -> str:
    """A code that opens nothing: wrong, used or old, one answer for all."""
    return say("That invitation opens nothing (any more). Ask for a new one: they type «invite» to me.")


def called(name: str, text: str) -> str:
    """A reminder that is somebody's, by name."""
    return f"{name}: {text}"
