"""What nobody understood, asked about by what it can be here: the pit, the meat, the fridge, a time; and each of them."""

from collections.abc import Sequence

from bot.intents.intents import Ask, Choose, Intent, StepDone
from bot.wording import asking, numbers, steps
from bot.wording.language import Words, later, say
from core.batch.assess import Assessment
from core.batch.batch import Phase
from core.person import Person
from core.plan.steps import Step

SLOT = "about"
_THINGS = {  # the likeliest first
    "none": ("start", "trade", "settings"),
    "waiting": ("mass", "thickness", "brine", "time", "plan"),
    "curing": ("bag", "meat", "fridge", "time", "plan"),
    "drying": ("meat", "fire", "fridge", "time", "plan"),
    "cooking": ("pit", "meat", "fire", "time", "plan"),
    "resting": ("meat", "time", "plan"),
    "chilling": ("meat", "ice", "fridge", "time", "plan"),
    "stored": ("fridge", "slice", "time", "plan"),
}
_LABELS = Words(
    {
        "start": "A new piece", "trade": "A question", "settings": "My settings", "mass": "The weight",
        "thickness": "The thickness", "brine": "The brine", "cure": "The cure", "meat": "The meat", "bag": "The bag",
        "fridge": "The fridge", "fire": "The fire", "pit": "The pit", "ice": "The ice", "slice": "The slice",
        "time": "A time", "plan": "The plan", "other": "Something else",
    }
)  # fmt: skip
_ASKED = {
    "start": later("Type the cut, the weight and the meal, like «3.2 kg brisket flat for saturday 13:00»."),
    "trade": later("Ask it in one line that ends with a question mark, like «how much salt for 3 kg of belly?»."),
    "settings": later("Say it in words, like «we are in Chicago», «only kg and c» or «flips at 7 and 19»."),
    "brine": later("What does the brine read, or is it mixed? Type it like «brine {cold}» or «brine is made»."),
    "cure": later("Is the cure weighed, or the meat in it? Type it like «cure is weighed» or «meat is in the cure»."),
    "bag": later("Is the bag turned, or did it leak? Type it like «flipped» or «bag leaked»."),
    "fridge": later("How cold is the fridge? Type it like «fridge {cold}»."),
    "fire": later("Is it lit, out, or low on fuel? Type it like «lit it», «fire went out» or «added charcoal»."),
    "pit": later("What does the pit read? Type it like «pit {pit}»."),
    "ice": later("Is the meat in the ice, or has it melted? Type it like «in the ice bath» or «ice has melted»."),
    "slice": later("What did the slice show? Type it like «sliced», «pink all through» or «too salty»."),
    "time": later("The hour of the meal, or when I shall call you? Type it like «dinner at 18:00» or «remind me at 18:00»."),
}  # fmt: skip
_HOT_MEAT = later("What does the core read, or what was done with it? Type it like «core {core}» or «took it off».")
_RAW_MEAT = later(
    "How does it look or smell, where does it lie, or what was done with it? "
    "Type it like «grey outside», «it is in the fridge» or «rinsed»."
)
_HOT = (Phase.COOKING, Phase.RESTING, Phase.CHILLING)


def ask(typed: str, a: Assessment | None) -> tuple[str, asking.Rows]:
    """That it was not understood, and to tap: what is called for, and what it can be about in this phase."""
    text = say(
        "I am not sure what «{typed}» means here, so nothing is noted.\nWhat is it about? Tap it, or say it in other words.",
        typed=typed[:60],
    )
    return text, (*(asking.next_buttons(a) if a is not None else ()), *things(a))


def not_that(typed: str) -> str:
    """That an answer was none, before the question is asked once more."""
    return say("I am not sure what «{typed}» means here.", typed=typed[:60])


def nothing_due(may_be: Sequence[Step], following: Step, a: Assessment) -> tuple[str, asking.Rows]:
    """«done», where nothing was called for: the steps that may be meant, to tap."""
    text = say(
        "What is done? Nothing waits just now; next is «{name}», {due}. Tap it, or name the step, like «flipped».",
        name=steps.name(following, a),
        due=numbers.when(following.due, a.person, a.now),
    )
    taps = ((say("{name}: done", name=steps.name(s, a)), StepDone(s.key, batch=a.batch.id)) for s in may_be)
    return text, tuple((asking.button(label, done),) for label, done in taps)


def things(a: Assessment | None) -> asking.Rows:
    """The things of a phase to tap, two in a row."""
    taps = [asking.button(_LABELS[name], _meant(name, a)) for name in _things(a)]
    return tuple(tuple(taps[i : i + 2]) for i in range(0, len(taps), 2))


def something_else(a: Assessment) -> asking.Rows:
    """Under what may be meant: it is none of these."""
    return ((asking.button(_LABELS["other"], Choose(SLOT, "other", a.batch.id)),),)


def asked(thing: str, a: Assessment | None, person: Person) -> tuple[str, asking.Rows]:
    """The question that a tapped thing leads to, with what to type."""
    f = person.units.temperature == "f"
    figures = {"cold": "38 f" if f else "3 c", "pit": "245 f" if f else "118 c", "core": "158 f" if f else "70 c"}
    if thing == "meat" and a is not None:
        return say(_HOT_MEAT if a.batch.phase in _HOT else _RAW_MEAT, **figures), ()
    if thing not in _ASKED:
        return say("What is it about? Tap it, or say it in other words."), things(a)
    return say(_ASKED[thing], **figures), ()


def _things(a: Assessment | None) -> Sequence[str]:
    if a is None:
        return _THINGS["none"]
    if "brine" in a.batch.done and a.batch.phase is Phase.WAITING:  # weighed out: neither weight nor thickness is open
        return ("brine", "meat", "fridge", "time", "plan")
    dry = a.batch.setup.method == "dry"
    return ["cure" if name == "brine" and dry else name for name in _THINGS.get(a.batch.phase.value, ())]


def _meant(name: str, a: Assessment | None) -> Intent:
    batch = a.batch.id if a is not None else None
    if name == "plan":
        return Ask("plan", batch=batch)
    return Choose("change", name, batch) if name in ("mass", "thickness") else Choose(SLOT, name, batch)
