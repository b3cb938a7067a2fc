"""Words for what went wrong: the verdict first, then the rule, and what to do; what is still to be known is asked."""

from datetime import datetime

from bot.wording import safety, salts
from bot.wording.language import Words, later, say
from bot.wording.safety import VERDICTS, finding
from core.batch.assess import Assessment, Change, assess
from core.batch.events import Probe
from core.plan.steps import Kind
from core.safety.findings import Finding, Outcome, Rule
from core.safety.incidents import judge_incident

INCIDENTS = {
    "fire_out": Rule.FIRE_OUT,
    "power_cut": Rule.POWER_CUT,
    "left_out": Rule.LEFT_OUT,
    "leaked": Rule.LEAK,
    "leak": Rule.LEAK,
    "dosed_twice": Rule.DOSED_TWICE,
    "doubled_cure": Rule.DOSED_TWICE,
    "warm_fridge": Rule.WARM_FRIDGE,
    "warm_brine": Rule.WARM_BRINE,
    "spoiled": Rule.SPOILED,
}

GO_ON = later("It can go on: this alone did no harm.")
BAG_FIRST = later(
    "A new bag now, with what is left of the liquid, pressed around the meat, and back into the cold.\n"
    "Wash the shelf and what stood below it: that is raw juice."
)
CLOSE = later("No more reminders for it. «cancel» closes it; if a reading was a slip, correct it, and I go on.")


def incident(a: Assessment, what: str) -> str:
    """Something went wrong: the verdict and its rule; what is still to be known is asked."""
    if what in salts.TOLD:
        return salts.told(a, what)
    rule = INCIDENTS.get(what)
    found = [f for f in a.ledger.verdict.because if f.rule is rule]
    if not found:
        return say("I wrote it down. How long was it, and how warm was the meat? Type both, like «2 h, core 45 c».")
    f = found[0] if a.ledger.thrown else _last(a, what) or found[0]
    if f.means is Outcome.CANNOT_SAY and _only_leaked(a, what):
        return "\n".join(t for t in (say(BAG_FIRST), safety.missing([f] if f.missing else [], a)) if t)
    said = say(GO_ON) if f.means is Outcome.SAFE else VERDICTS[f.means], finding(f, a), ADVICE.get(f.advice, "")
    lines = (said[2], said[1]) if _in_time(f) else said
    closing = (say(CLOSE) if a.ledger.thrown else "", safety.missing([f] if f.missing else [], a))
    return "\n".join(t for t in (*lines, *closing) if t)


def _only_leaked(a: Assessment, what: str) -> bool:
    """A leak of which nothing else is told, while the meat lies in its cure: nothing is served yet, and a deed comes first."""
    told = [i for i in a.ledger.record.incidents if i.what == what]
    return what == "leaked" and "out" not in a.batch.done and not told[-1].facts


def _in_time(f: Finding) -> bool:
    """Whether a core that is read now still settles it: then that is what to do, and no verdict yet."""
    limits = f.value is not None and f.limit is not None and f.value <= f.limit
    return f.means is Outcome.CANNOT_SAY and f.missing == "core_reading" and limits


def _last(a: Assessment, what: str) -> Finding | None:
    """What was found of the one that was told last."""
    told = [i for i in a.ledger.record.incidents if i.what == what]
    return judge_incident(told[-1], a.ledger.record) if told else None


def thrown(change: Change, done: Kind | None = None) -> str:
    """The verdict that nothing more is done with it; the way to close it is told once, with the way to put a slip right.

    `done` is what was done with it all the same: where it was eaten, what to look out for comes with it.
    """
    a = change.after
    known = change.before is not None and _known(change.before)
    found = [f for f in a.ledger.verdict.because if f.means is Outcome.THROW_AWAY]
    told = sorted(found, key=lambda f: f.rule not in INCIDENTS.values())  # what the cook told of comes before its like
    first = [VERDICTS[Outcome.THROW_AWAY], *(finding(f, a) for f in told[:1])]
    if told and told[0].rule is Rule.COOLING and not known:
        first.append(
            say("A core that you read between those two counts: type it with its hour, like «core 22 c at 18:10».")
        )
    if done is Kind.SERVE:
        first.append(safety.eaten())
    return "\n".join(first if known else [*first, say(CLOSE)])


def _known(a: Assessment) -> bool:
    """Whether the verdict had fallen by the last reading already, and not only by the hours since."""
    return bool(a.batch.readings) and assess(a.batch, a.person, a.batch.readings[-1].at).ledger.thrown


def fire_out(a: Assessment, read_at: frozenset[datetime]) -> str:
    """After the fire went out: what the first core reading decides, and for good where it decides against eating later.

    `read_at` are the times of the core readings that are being answered.
    """
    out = [at for at, what in a.batch.incidents if what.what == "fire_out"]
    found = [f for f in a.ledger.verdict.because if f.rule is Rule.FIRE_OUT]
    if not out or not found:
        return ""
    f, later = found[0], [r.at for r in a.batch.of_probe(Probe.CORE) if r.at >= out[-1]]
    if f.means in (Outcome.THROW_AWAY, Outcome.EAT_NOW):
        return "\n".join([VERDICTS[f.means], finding(f, a), ADVICE.get(f.advice, "")]).strip()
    return ADVICE.get(f.advice, "") if later and later[0] in read_at else ""


ADVICE = Words(
    {
        "reheat_165_today": "Eat it today, heated to 74 °C (165 °F), or throw it away.",
        "throw_away_advised": "Throwing it away is the safe way.",
        "throw_away": "",
        "not_tasted": "Do not taste it; no rinsing, salt or heat brings it back. Wash your hands, the shelf and what it touched.",
        "unless_core_is_cold": "",
        "fridge_colder": "Turn the fridge down, move the bag low and to the back, and read it again in two hours.",
        "to_165f_now_eat_today": "Bring it to 74 °C (165 °F) at once, and eat it today; not for anybody at risk.",
        "say_how_long_out": "How long can the fire have been out at most? Type «fire was out 30 min»; light it again meanwhile.",
        "read_the_core": "Read the core now, in the middle of the thickest part.",
        "relight_and_finish": "Light it again and finish it.",
        "through_140f_now": "Light it again now: after a fire that was out it has to pass 60 °C (140 °F) within 4 h of going on, cured or not; or finish it in an oven.",
        "into_the_fridge_now": "Into the fridge with it now; write down when.",
        "ice_and_go_on": "Ice around it, door shut, and go on.",
        "bag_again": "A new bag and a tray, and go on.",
        "top_up_same_strength": "A new bag, and top it up with brine of the same strength, never with water alone.",
        "rinse_weigh_restart": "Rinse it, weigh it, and start the cure anew with a fresh dose. Then say «undo», and when it went in.",
        "pour_off_no_more_cure": "Pour it off now, rinse the meat, and put no more curing salt on it: what it took stays in it, and a fresh dose "
        "could pass the limit. It counts as uncured: say «cancel», begin it anew, like «3.2 kg brisket flat, no nitrite», and cook it "
        "through within the days that raw meat keeps from when it first went in (3 to 5, birds 1 to 2).",
        "make_it_anew": "The meat is not in yet, so nothing is lost: throw that cure out and weigh it out anew. Then say «undo».",
        "no_fresh_dose": "No fresh dose on top: what it took stays in it, and with a whole dose once more it could pass the limit. "
        "It counts as uncured from here: a new bag, and cook it through within the days that raw meat keeps from when it went in "
        "(3 to 5 in the fridge, birds 1 to 2); it cools and keeps by the stricter rules.",
        "uncured_rules": "It counts as uncured from here: it cools and keeps by the stricter rules.",
    }
)
