"""Words for everything that the house refuses or cannot do: what is wrong, and what to type instead."""

from datetime import datetime, timedelta
from math import isinf

from bot.wording import language, meat_names, meats, numbers, ranges
from bot.wording.language import Words
from core.errors import (
    ByTheClock,
    Gone,
    Missing,
    NotDelivered,
    NotKept,
    OtherWay,
    OutOfRange,
    OverLimit,
    RawTooLong,
    SaltbellError,
    TooLate,
    TooLong,
    TooMany,
    TooSoon,
    UnknownCure,
    Unreadable,
)
from core.person import Person
from core.sources import every_source

FIELDS = Words(
    {
        "method": "way of curing",
        "nitrite_target": "nitrite",
        "salt_fraction": "salt",
        "water_share": "water",
        "cover_share": "cover brine",
        "pump_fraction": "pump",
    }
)
SUBSTANCES = Words({"nitrite": "nitrite", "nitrate": "nitrate"})
UNREAD = Words({"photo": "pictures", "voice": "voice messages", "sticker": "stickers", "video": "videos"})


def say(error: SaltbellError, person: Person) -> str:
    """One clear, kind sentence for a refusal, with what to do instead."""
    match error:
        case OutOfRange():
            return ranges.out_of_range(error, person)
        case Missing("brine_strength"):
            return language.say(
                "How strong is that brine? I count hours only in one whose salt I know: type both, like «15 % brine for 3 h»."
            )
        case Missing(quantity):
            return language.say(
                "I still need the {get}. Type it with its unit.",
                get=ranges.QUANTITIES.get(quantity, quantity.replace("_", " ")),
            )
        case OverLimit():
            return _over_limit(error)
        case UnknownCure():
            return language.say(
                "No dose without the strength of your curing salt.\nLook for the nitrite figure on the packet, "
                "like 6.25 %, 5.88 % or 0.6 %. Salt that is merely pink, from a mine, is no cure.\n"
                "Where no label says it, buy one that does; the plan waits."
            )
        case ByTheClock(strength):
            return language.say(
                "No curing salt in a brine of {strength} that is left by the clock.\nNobody could tell how much nitrite the meat took: "
                "say «without nitrite», or «equilibrium brine» for a cure.",
                strength=numbers.percent(strength),
            )
        case TooMany(most):
            return language.say(
                "{most} batches are under way in this chat, and more I cannot keep apart.\nClose one that is over, "
                "with «cancel» and its name, and tell me of this one again.",
                most=f"{most}",
            )
        case OtherWay() | RawTooLong() | TooLate() | TooLong() | TooSoon() | Gone():
            return _not_so(error, person)
        case _:
            return _machine(error)


def _not_so(error: OtherWay | RawTooLong | TooLate | TooLong | TooSoon | Gone, person: Person) -> str:
    match error:
        case OtherWay(cut, _, ways):
            way = {
                "inject": language.say("inject it"),
                "dry": language.say("cure it dry"),
                "brine": language.say("brine it"),
            }[ways[0]]
            return language.say(
                "A {get} is not cured that way: the middle would be reached too late.\nFor this one, {way}.",
                get=meat_names.CUTS.get(cut, cut.replace("_", " ")),
                way=way,
            )
        case TooLate(thing):
            return language.say(
                "The meat is in its cure already, so the {get} stays as it is. "
                "Adding cure or brine now would change the dose; a test slice tells more.",
                get=FIELDS.get(thing, thing.replace("_", " ")),
            )
        case RawTooLong():
            return _raw_too_long(error)
        case TooLong(days, limit) if isinf(days):
            return language.say(
                "The cure would never reach the middle of that in time. Inject it, or split it into thinner pieces."
            )
        case TooLong(days, limit):
            return language.say(
                "{days} in the cure: I plan no more than {limit} without your word.\nTap it, or type fewer days. "
                "Quicker: inject it, or split it into thinner pieces.",
                days=numbers.days(days),
                limit=f"{limit:.0f}",
            )
        case TooSoon():
            return too_soon(error, person)
        case Gone(thing):
            return _gone(thing)


def _raw_too_long(error: RawTooLong) -> str:
    limit, days = numbers.days(error.limit_days), numbers.days(error.days)
    if error.fish:
        return language.say(
            "Fish keeps raw for {limit}, from the salt to the fire, and this would be {days}.\n"
            "Type fewer days. Fish that has to wait waits in the freezer, before its salt.",
            limit=limit,
            days=days,
        )
    return language.say(
        "Without curing salt that keeps raw for {limit}, from the salt to the fire, and this would be {days}.\n"
        "Type fewer days, or cure it, like «cure is 6.25 %».",
        limit=limit,
        days=days,
    )


def _over_limit(error: OverLimit) -> str:
    memory = language.say(" (from memory)") if error.status == "MEMORY" else ""
    passing = (
        language.say(
            "\nThe most that passes is {passing_cure} of this curing salt.",
            passing_cure=numbers.grams(error.passing_cure_kg),
        )
        if error.passing_cure_kg
        else ""
    )
    return language.say(
        "No: that is {found} {substance}, and the limit is {limit} ({jurisdiction}, {title}{memory}).{passing}",
        found=numbers.ppm(error.found_mg_kg),
        substance=SUBSTANCES.get(error.substance, error.substance),
        limit=numbers.ppm(error.limit_mg_kg),
        jurisdiction=error.jurisdiction,
        title=_title(error.source),
        memory=memory,
        passing=passing,
    )


def _title(key: str) -> str:
    """The source as it is called, by its key."""
    known = every_source().get(key)
    return key if known is None else known.title


def too_soon(error: TooSoon, person: Person) -> str:
    """The date cannot be met: when it can, before any other way is offered."""
    earliest = f"{numbers.day(error.earliest, person)} {numbers.clock(error.earliest, person)}"
    wish = f"{numbers.day(error.deadline, person)} {numbers.clock(error.deadline, person)}"
    return language.say(
        "{wish} is too soon: the cure needs {cure_days_p90}. As it stands, the earliest meal is {earliest}.",
        wish=wish,
        cure_days_p90=numbers.lying(error.cure_days_p90),
        earliest=earliest,
    )


FAR = timedelta(days=300)  # the next 20 September, said on the 23rd, is hardly meant


def unfit_date(person: Person, deadline: datetime, now: datetime) -> str | None:
    """A meal date that has gone by, or lies so far ahead that another was meant; None for any other."""
    date = f"{numbers.day(deadline, person)} {deadline.astimezone(person.tz):%Y} {numbers.clock(deadline, person)}"
    if deadline <= now:
        return language.say(
            "{date} has gone by already. When is the meal? Type a later day, like «saturday 13:00».", date=date
        )
    if deadline - now > FAR:
        return language.say(
            "{date} is most of a year away. When is the meal? Type a nearer day, like «saturday 13:00».", date=date
        )
    return None


def _gone(thing: str) -> str:
    if thing == "batch":
        return language.say("Nothing like that is under way here. Start with the cut and the weight, or type «help».")
    if thing == "event":
        return language.say("There is nothing left to take back.")
    if thing == "due":
        return language.say(
            "Nothing waits to be done just now. Type «plan» to see the week, or name the step, like «flipped»."
        )
    if thing.startswith("nitrite limit"):
        return meats.nitrite_refused(thing)
    if thing.startswith("purpose"):
        return language.say(
            "That is no way to eat this one that I can plan. Ask «eaten how» under the plan for those that are."
        )
    return language.say(
        "{none}\nI do plan {planned}: type it with its weight, like «2 kg pork belly».",
        none=no_plan_of(thing.removeprefix("product ").removeprefix("cut ")),
        planned=meat_names.planned(),
    )


def no_plan_of(name: str) -> str:
    """A meat that has no plan here."""
    return language.say("I plan no {name} yet.", name=name.replace("_", " "))


def _machine(error: SaltbellError) -> str:
    match error:
        case NotKept():
            return language.say(
                "I could not keep that just now, so please take it as not said. Try again in a few minutes."
            )
        case NotDelivered():
            return language.say("I could not get a message through. It will come again.")
        case Unreadable(file, where, why):
            return language.say(
                "The file {file} cannot be read at {where}: {why}. The keeper of this bot has to mend it.",
                file=file,
                where=where,
                why=why,
            )
        case _:
            return language.say("I cannot do that.")


def no_strength(typed: str) -> str:
    """Something that is no strength of a curing salt."""
    return language.say(
        "«{typed}» is no strength that I can dose by.\nThe packet says its nitrite, like 6.25 %, 5.88 %, 0.6 % or 0.5 %; "
        "salt that is merely pink, from a mine, is no cure.",
        typed=typed,
    )


def bare_strength(typed: str) -> str:
    """A strength that was typed without its percent sign."""
    return language.say(
        "«{typed}»: is that the nitrite that the packet says, in percent? Tap it if it is; nothing is changed before.",
        typed=typed,
    )


def odd_strength(typed: str) -> str:
    """A strength that no usual packet of curing salt has."""
    number = typed.removesuffix("%").strip()
    return language.say(
        "Look at the packet again: does it say {number} % nitrite?\nUsual curing salts hold 0.4 to 1 %, 5 to 6.5 % or 10 %, "
        "and with the wrong number the dose is wrong by as much.\nI dose nothing by it until you tap it, or type what the "
        "packet says, like «cure is 6.25 %».",
        number=number,
    )


def our_fault(key: str) -> str:
    """Something broke on our side; the message is kept by its key."""
    return language.say(
        "Something went wrong on my side, and what you just said had no effect. "
        "Please say it again; if it happens twice, give the keeper of this bot the word {key}.",
        key=key,
    )


def cannot_read(kind: str) -> str:
    """A sticker, a voice message, a picture: kindly declined, with what works instead."""
    return language.say(
        "I cannot read {get}. Type it in words, like «core 158» or «flipped».",
        get=UNREAD.get(kind, language.say("that kind of message")),
    )
