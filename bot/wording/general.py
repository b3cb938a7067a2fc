"""Words that belong to no subject: hello, help, what is unclear, what is over."""

from bot.wording import meat_names, numbers, plans
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.ways import Way


def hello(kind: str, a: Assessment | None) -> str:
    """The first sentence of the talk, or a short word back to a greeting, to thanks or to a nod."""
    if kind != "hello":
        said = {
            "thanks": say("You are welcome."),
            "glad": say("I am glad."),
            "weary": say("One step after the other; I keep the hours."),
        }
        back = said.get(kind, say("Good."))
        return f"{back} {plans.coming(a)}".strip() if a is not None else back
    if a is not None:
        return say("Hello. {now}", now=plans.now(a))
    return say(
        "Hello. Tell me the cut, its weight and when you want to eat it, like «3.2 kg brisket flat for saturday 13:00».\n"
        "I work out the dose, the days and the hours, and remind you of every step."
    )


def help_(a: Assessment | None) -> str:
    """Short, and by where the person is."""
    if a is None:
        return say(
            "I work out the dose of the cure, the days, the fire and the cooling, check your readings, and remind you of every step.\n"
            "Type the cut, the weight and the meal, like «3.2 kg brisket flat for saturday 13:00», or ask in plain words.\n"
            "I plan {planned}.\n"
            "Settings in words: «we are in Chicago», «only kg and c», «flips at 7 and 19».",
            planned=meat_names.planned(),
        )
    by_phase = {
        "waiting": say("«brine 3 c», «done», «48 mm», «cure is 6.25 %»"),
        "curing": say("«flipped», «fridge 3 c», «forgot this morning», «why these days»"),
        "drying": say("«rinsed», «lit it», «meat is on»"),
        "cooking": say("«158/245» (core/pit), «wrapped in foil», «how much longer», «picture», «fire went out»"),
        "resting": say("«core 62 c», «in the chill»"),
        "chilling": say("«core 27 c», «is it safe»"),
        "stored": say("«grey 12 mm in the middle of 48», «pink all through», «too salty», «1.9 kg after», «record»"),
    }
    here = by_phase.get(a.batch.phase.value, "«plan»")
    return say(
        "Now you can say {here}.\nAlways: «plan», «what now», «is it safe», «no, 185», «undo», «dinner moved to 15:00», "
        "«pause», «cancel».",
        here=here,
    )


def no_batch() -> str:
    """A question about a batch where there is none."""
    return say(
        "Nothing is under way here yet. Start with the cut and the weight, like «3.2 kg brisket flat for saturday 13:00»."
    )


def not_known(text: str, a: Assessment | None) -> str:
    """Out of what is known: said, with whom to ask."""
    if len(text) > 300:
        return say("That is more than I can take in at once. Say it in one short line, like «core 158» or «what now».")
    if a is None:
        return say(
            "I do not know that. Start with the cut and the weight, like «3.2 kg brisket flat for saturday 13:00», or type «help».\n"
            "For the rest, your butcher or the local extension office knows best."
        )
    return say(
        "I do not know that. I know this batch: ask «plan», «what now», «why these days» or «is it safe».\n"
        "For the rest, your butcher or the local extension office knows best."
    )


def old_button() -> str:
    """A button of something that is gone."""
    return say("That button is from something that is gone. Type «plan» to see where things stand.")


def over(a: Assessment) -> str:
    """A button of a batch that is over."""
    return say(
        "«{name}» is over, so that button does nothing any more. Type a new cut and weight to begin again.",
        name=a.batch.name,
    )


def edited() -> str:
    """An edit of something that is no reading."""
    return say("I saw that you changed an earlier message, and could not tell what it changes. Please say it anew.")


def thickness_guessed() -> str:
    """Nobody has a ruler: the guess from the weight stands, with its wide band."""
    return say(
        "Then I go on with my guess from the weight, and its wide band. A ruler makes the days shorter or surer: «48 mm»."
    )


def kept() -> str:
    """Nothing dropped."""
    return say("Kept. Everything stays as it is.")


def not_begun() -> str:
    """A start that was half said is let go of."""
    return say("Then nothing is begun. Start anew with the cut and the weight, whenever you like.")


def dropped(a: Assessment) -> str:
    """A batch dropped, its log kept."""
    return say(
        "«{name}» is dropped and its reminders are silent. Raw meat that was in the cure: cook it through or throw it away.",
        name=a.batch.name,
    )


def forgotten() -> str:
    """A doubted reading that was none."""
    return say("Forgotten. Send the reading again when you have it.")


def answered_already() -> str:
    """An answer to a question that is not open."""
    return say("That question is answered already. Type «plan» to see where things stand.")


def about(a: Assessment) -> str:
    """Which batch the talk is about from here on."""
    return say("«{name}» it is. {now}", name=a.batch.name, now=plans.now(a))


def at_once(texts: tuple[str, ...]) -> str:
    """Several things that were said in one message, answered in one: what comes next is told once, at the end."""
    *before, last = texts
    estimate = say("Ready {when}, at {target}.").partition("{")[0]
    anew = any(line.startswith(estimate) for line in last.splitlines())  # a later word of the message moved it
    kept = [
        _without_next("\n".join(x for x in t.splitlines() if not (anew and x.startswith(estimate)))) for t in before
    ]
    return "\n".join([text for text in kept if text] + [last])


def _without_next(text: str) -> str:
    cut = max(text.rfind(lead) for lead in plans.leads())
    tail = text[cut:]
    return text if cut < 0 or "\n" in tail else text[:cut].rstrip()


def ways(offered: tuple[Way, ...]) -> str:
    """The lead to the ways that work."""
    if not offered:
        return ""
    days = {
        "hot": say("eaten hot it needs no day for the chill"),
        "inject": say("injecting it needs {d}"),
        "dry": say("a dry cure needs {d}"),
        "strong": say("a strong brine, 1 part of salt to 7 of water by weight, needs {d}"),
        "strong_hot": say("a strong brine, 1 part of salt to 7 of water by weight, needs {d}"),
        "thinner": say("split to half its thickness it needs {d}"),
        "soonest": say("a later date leaves time"),
        "date": say("a later date leaves time"),
    }
    parts = dict.fromkeys(days[w.name].format(d=numbers.lying(w.cure_days)) for w in offered)
    return say("What does work: {ways}. Tap one, or type another day.", ways="; ".join(parts))


def no_plan_till_then() -> str:
    """A plan was there, and what was said took it away."""
    return say("Until then there is no plan, and I call for nothing. «undo» brings the plan back as it was.")


def late_reminder(due: str, text: str) -> str:
    """A reminder that comes late says when it was due."""
    return say("This was due {due}. {text}", due=due, text=text)


def repeat(text: str) -> str:
    """A message that may have arrived before."""
    return say("{text}\n(Again, in case it did not reach you.)", text=text)


def without_file(text: str) -> str:
    """Words whose picture or file could not be made."""
    return say("{text}\n(The picture or file could not be made; ask for it again.)", text=text)


def in_your_language() -> str:
    """The language of the answer was chosen by what was typed; how to have it otherwise."""
    return say("I answer in the language you type; «in english» has me answer in English.")
