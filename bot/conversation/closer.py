"""A question about the batch that its words made a broad one, as the closer one that it is, by likeness."""

import re
from dataclasses import replace

from bot import measures
from bot.conversation import ahead, around
from bot.conversation.on_the_fire import core_doubted
from bot.intents import yard
from bot.intents.intents import Ask
from bot.intents.normal import normal
from bot.intents.questions import is_question
from bot.intents.sums.of_heat import CAN_WE_EAT, IS_IT_ENOUGH
from bot.intents.sums.told import told
from core.answers.entries import ENGLISH, OF_BATCH, asked_of_batch
from core.answers.find import FIRMLY, PLAINLY, closer_than
from core.plan.steps import Kind
from core.service.turn import Turn

SHORTEST = 2  # words; «plan» is the whole plan
OF_DAYS = re.compile(r"\b(?:early|earlier|sooner|days?|already|before)\b")
EXACT = frozenset({"batches", "who"})
OF_STEPS = frozenset({"log", "wrap"})  # «did i wrap it» asks for no advice
_TO_COME = re.compile(r"^(?:so |and |ok )?(?:when|what time) (?:do|should|shall|can|must|to|would)\b")
BESIDE_A_SUM = frozenset({"in_time", "why_dose", "cooled", "out", "day", "eta", "above"}) | around.WITH_A_MASS
BY_NAME = frozenset({"now", "plan", "left", "fuel", "log", "dose", "eta", "light", "late"})  # or of a step, of a day
BROAD = frozenset({"log", "plan", "now", "dose", "sum", "pull", "safe"})
OF_A_PHASE = (  # asked for as a rule while it lies in the cure, on the fire, or off it
    (
        frozenset({"waiting", "curing"}),
        frozenset(
            {
                "day",
                "out",
                "flip_next",
                "skip_flip",
                "missed",
                "earlier",
                "longer",
                "cured_yet",
                "fridge_if",
                "brine_cold",
                "more_salt",
            }
        ),
    ),
    (
        frozenset({"drying", "cooking"}),
        frozenset({"eta", "wrap", "stall", "fire", "rate", "reaches", "hotter", "at_core", "pull_at", "pit_falls"}),
    ),
    (
        frozenset({"resting", "chilling", "stored"}),
        frozenset({"cooled", "slice", "warm_up", "cooked_for", "eat_cold", "rest"}),
    ),
)
ABOUT = {"why_days": ("why", "days"), "why_dose": ("why", "dose"), "why_hours": ("why", "hours")}
ONLY_WITH = {  # no closer topic than the one that its words made it, where none of these is said
    "flip_next": re.compile(r"\b(?:flip|turn)"),
    "pull_at": re.compile(
        r"^(?:so )?(?:take|pull) (?:it|them|her|him)(?: off)?\W*$"
        r"|\b(?:what (?:if|happens|would)|if|can|could|ok|okay|safe|now|yet|already|time to|(?:have|need) to|must)\b"
    ),
    "at_core": re.compile(r"^(?!.*\b(?:pit|smoker|grill|fire|raise|drop|lower|crank|bump|turn(?:ed)?|set|run)\b)"),
    "safe": re.compile(r"^(?!.*\b(?:on (?:time|track)|in time|for (?:lunch|dinner|supper|\d)|by \d)\b)"),
    "who": re.compile(
        r"^(?!.*\bwho (?:put|lit|took|flipped|turned|rinsed|wrapped|made|mixed|rubbed|started)\b)"
        r".*\b(?:who\w*|any(?:one|body)|some(?:one|body)|duty|charge|responsible)\b"
    ),
    "which_call": re.compile(r"\b(?:which|what\w*|why|for)\b"),
    "hotter": re.compile(
        r"\b(?:if|should|shall|would|could|can|may|do i (?:go|turn|run|push)|(?:hot|high|low|fast|quick|soon)er|crank"
        r"|bump|push|raise|help|instead|worth|or|up to|degrees more|open it up)\b"
    ),
    "again": re.compile(r"\b(?:salt\w*|same|next|repeat|another|like (?:it|this|that)|recipe|more like)\b"),
    "photo": re.compile(r"^(?!.*\blooking\b)"),
    "feed": re.compile(
        r"^(?!.*\b(?:days?|hours?|flips?|turns?|(?:close|cold|hot|warm|good|long|strong) enough"
        r"|enough (?:time|ice|charcoal|fuel|wood|salt|cure|water|brine))\b)"
        r".*\b(?:feed\w*|people|folks?|guests?|mouths?|portions?|serv\w+|plates?|heads?|eat\w*|enough for|how many"
        r"|go round|stretch|of us|adults|kids|ppl|pax|enough|plenty|do for)\b"
    ),
    "run": re.compile(r"^(?!.*\b(?:was|were|did|has|got)\b)"),
    "missed": re.compile(r"^(?!.*\b(?:grams?|cure|salt|dose|write|wrote|weight|sugar|spices?)\b)"),
    "dose": re.compile(r"^(?!.*\b(?:costs?|price|pay|paid|spend|spent)\b)"),
    "cook_on": re.compile(r"\b(?:cook\w*|smok\w*|light\w*|lit|fire|grill\w*|bbq|barbecu\w*)\b"),
    "hold": re.compile(r"^(?!.*\bdoes (?:that|it)(?: still)? hold\b)"),
    "reweighed": re.compile(r"^(?!.*\b(?:weigh\w* out|(?:of|the) (?:cure|pink|salt))\b)"),
    "another_piece": re.compile(r"^(?!.*\bdose\b)"),
    "out": re.compile(r"^(?!.*\bsoak)"),
    "skip_flip": re.compile(r"^(?!.*\b(?:meat|it) (?:goes|went|go) in\b)"),
    "more_salt": re.compile(r"^(?!.*\b(?:cure|curing|pink|nitrite|prague|tasted?|slices?|came out)\b).*\bsalt\b"),
    "ice": re.compile(
        r"^(?!.*\blong).*\b(?:ice\w*|stir\w*|bath|cold|warm|melt\w*|bags?|kilos?|kg|cubes?)\b"
    ),  # and no «how much longer»
    "fire_hours": re.compile(
        r"^(?!.*\b(?:rest|chill|cool|brine|cure|thaw|soak|steam|fridge)\w*)"
        r".*\b(?:fire|smok\w*|cook\w*|grill|pit|on|pot|poach\w*|boil\w*|simmer\w*|heat|charcoal)\b"
    ),
    "meat_on": re.compile(r"^(?!.*\b(?:fridge|freezer|ice)\b)"),
    "last_reading": re.compile(r"^(?!.*\bfor (?:it|this|the \w+)\b)"),
    "above": re.compile(r"\b(?:when|did|was|were|has|is|how|what time)\b"),
    "use_by": re.compile(r"^(?!.*\b(?<!the )rest\b)"),
    "since": re.compile(r"^(?!.*\breadings?\b)"),
    "catch_up": re.compile(r"^(?!.*\b(?:know what (?:i|we)|trust me|always done)\b)"),  # who insists
    "earlier": re.compile(r"^(?!.*\bstart\w*\b)"),
    "begin": re.compile(r"^(?!.*\bclock\b)"),
    "in_time": re.compile(r"^(?!.*(?<![\d.])(?:6\.25|5\.88|0\.[4-6])(?!\d))"),  # of a packet's strength, and of no hour
    "reaches": re.compile(r"^(?!.*\bdid\b).*\b(?:when|long(?:er)?|time|eta|hours?|hit|get|reach\w*|will)\b"),
    "fuel": re.compile(
        r"^(?!.*\b(?:add(?:ing)?|low on|running (?:low|out)|(?:nearly|almost) (?:out|gone)|short (?:of|on)|ran out)\b)"
    ),  # what to do then is an entry
    "fridge_if": re.compile(r"^(?!.*\b(?:cold|cool|low|freez\w*|froze\w*)\b)"),
    "pit_falls": re.compile(r"\b(?:drop|fall|los[ei]|sink|cold|dying|hold|keep|down)"),
    "rub": re.compile(r"\b(?:how (?:much|many|big)|grams?|amount|enough)\b"),  # and none that is told of
    "portion_salt": re.compile(r"\b(?:portions?|slices?|servings?|plates?|sodium)\b"),
}
_OWN = frozenset({"mass", "length", "volume", "fraction", "ppm"})  # told with the question: no figures of this record


def figured(plain: str) -> bool:
    """Whether a line brings a weight, a length, a volume or a share of its own."""
    return bool(_OWN & {m.kind for m in measures.find(plain)})


def with_a_mass(text: str) -> frozenset[str]:
    """The topics that the weight of a line may be of: curing salt and no meat, or meat and no curing salt."""
    line = told(normal(text))
    grams = line.cure is not None or (line.heaviest is None and line.water is None)
    return (
        frozenset({"grams", "more_salt"})
        if grams and line.meat is None
        else around.WITH_A_MASS - {"grams", "more_salt"}
    )


def is_worded(topic: str, asked: str) -> bool:
    """Whether a line has the words that a topic cannot do without."""
    words = ONLY_WITH.get(topic)
    return words is None or bool(words.search(asked.lower()))


def closer(turn: Turn, intent: Ask, phase: str) -> Ask:
    """A question that its words made one for the whole log or plan, as the closer one that it is by likeness."""
    plain = normal(intent.text, turn.person.language)
    asked = intent.text if turn.person.language == ENGLISH else plain
    alone = intent.topic == "pull_at" and (IS_IT_ENOUGH.match(plain) or CAN_WE_EAT.search(plain))
    out_of_it = intent.topic == "earlier" and not OF_DAYS.search(plain)  # «can i take it out», of what is on the fire
    if phase == "cooking" and (alone or out_of_it or core_doubted(plain, turn.person) is not None):
        return replace(intent, topic="pull_at")
    after_a_reading = intent.topic == "now" and re.search(r"(?<![\d.])\d{2,3}\b", asked)  # «core 160 now what»
    if intent.topic in BY_NAME and (by_name := ahead.topic(turn, intent.text, phase)):
        return replace(intent, topic=by_name)
    if (intent.about == "shopping" or intent.topic == "feed") and not is_question(
        plain
    ):  # how many will eat is told: whether this is enough
        return replace(intent, topic="feed", about="")
    if len(asked.split()) < SHORTEST or after_a_reading or not _may_be_another(intent.topic):
        return intent
    if intent.topic in OF_STEPS and not _TO_COME.search(plain) and (step := around.step_asked(asked)):
        return replace(intent, topic="flip_last" if step is Kind.FLIP else "done_step")
    possible = _possible(intent.topic, asked, phase)
    among, away = possible & with_a_mass(asked) if figured(plain) else possible, far(phase)
    least = PLAINLY if intent.topic in BROAD or intent.topic in away else FIRMLY
    found = closer_than(intent.topic, asked, among, away, least)
    topic, about = ABOUT.get(found or "", (found, ""))
    return intent if topic is None else replace(intent, topic=topic, about=about)


def far(phase: str) -> frozenset[str]:
    """The topics of another time than that of a batch in a phase."""
    return frozenset().union(*(topics for phases, topics in OF_A_PHASE if phase not in phases))


def _may_be_another(topic: str) -> bool:
    """Whether the words that made a topic of a line are broad: there are others like it, told apart by likeness."""
    return topic in ("sum", "pull") or (f"{OF_BATCH}{topic}" in asked_of_batch() and topic not in EXACT)


def _possible(topic: str, asked: str, phase: str) -> frozenset[str]:
    """The topics that a line may be for in a phase; beside a sum those that bring its figures."""
    named = BESIDE_A_SUM if topic == "sum" else {name.removeprefix(OF_BATCH) for name in asked_of_batch()}
    return frozenset(name for name in named if is_worded(name, asked) and not yard.is_ahead(name, phase))
