"""What was said and read of a batch: the last reading, the fridge, the weight, the cure that went in, the way it is cured."""

from datetime import datetime

from bot.wording import cooling, doses, meats, numbers, plans, readings, safety
from bot.wording.language import Words, say, say_n
from core.batch.assess import Assessment
from core.batch.batch import Phase, Reading
from core.batch.events import Probe
from core.batch.ledger import uncured
from core.plan.steps import Kind, Step
from core.safety.findings import Outcome
from core.safety.storage import keeping
from core.units import Celsius

SHOWN = 8  # readings in a list
COLD: Celsius = 4.45  # 40 °F, as the rules count it
WAYS = Words(
    {
        "brine": "in a brine that ends even, in its bag",
        "dry": "dry, everything in its bag",
        "inject": "injected",
    }
)


def last_reading(a: Assessment, probe: Probe | None) -> str:
    """The last number of a probe, or of any, how long ago, and the one before it."""
    seen = a.batch.of_probe(probe) if probe else a.batch.readings
    if not seen:
        return say("Nothing is read yet. {next}", next=plans.coming(a)).strip()
    last = seen[-1]
    before = [r for r in seen[:-1] if r.probe is last.probe]
    beside = [r for r in seen if r.at == last.at]  # core and pit of one message
    read = ", ".join(one(r, a) for r in beside)
    lead = say("Last read {reading}, {span} ago.", reading=read, span=numbers.span(a.now - last.at))
    earlier = say("Before it: {reading}.", reading=one(before[-1], a)) if before else ""
    return "\n".join(line for line in (f"{lead} {earlier}".strip(), plans.coming(a)) if line)


def last_of_both(a: Assessment) -> str:
    """The last number of the pit and that of the core, each with its own hour, and what comes next."""
    said = [last_reading(a, probe).split("\n")[0] for probe in (Probe.CORE, Probe.PIT) if a.batch.of_probe(probe)]
    if not said:
        return last_reading(a, None)
    return "\n".join(line for line in (*dict.fromkeys(said), plans.coming(a)) if line)


def before_a_jump(a: Assessment, probe: Probe) -> str:
    """What was read of the same place last: why another number is doubted."""
    seen = a.batch.of_probe(probe)
    if not seen:
        return ""
    return say("Last read {reading}, {span} ago.", reading=one(seen[-1], a), span=numbers.span(a.now - seen[-1].at))


def if_right(then: Assessment) -> str:
    """What a doubted number makes of the chill or of the cook, were it right; nothing of it is kept."""
    if then.batch.phase is Phase.CHILLING:
        stands = cooling.stands(then)
    else:
        stands = say("Ready {when}.", when=numbers.time_band(then.ready, then.person, then.now)) if then.ready else ""
    return say("If it is right:\n{stands}", stands=stands) if stands else ""


def between(a: Assessment, probe: Probe | None) -> str:
    """How many readings there are of a probe, the first, the coldest and the hottest."""
    last = a.batch.readings[-1].probe if a.batch.readings else Probe.FRIDGE
    last = Probe.CORE if last is Probe.PIT and a.batch.of_probe(Probe.CORE) else last  # «the highest» is of the meat
    seen = a.batch.of_probe(probe or last)
    if not seen:
        return last_reading(a, probe)
    low, high = (pick(seen, key=lambda r: r.celsius) for pick in (min, max))
    count = say_n(
        "{n} reading: {first}.", "{n} readings, the first {first}.", len(seen), n=len(seen), first=one(seen[0], a)
    )
    if len(seen) == 1:
        return count
    return count + " " + say("Lowest {low}, highest {high}.", low=one(low, a), high=one(high, a))


def no_probe(a: Assessment) -> str:
    """A thermometer that is lost: what was read last, and that a number by hand is wanted."""
    if a.batch.phase in (Phase.WAITING, Phase.CURING, Phase.DRYING):
        return say(
            "Then nobody knows how cold it is, and I do not guess it: no meat goes into a brine that was not read, and "
            "the fridge is read once a day.\nAny thermometer that shows {limit} will do, in a glass of water or in the brine.",
            limit=numbers.both(4.4, a.person),
        )
    last = a.batch.last(Probe.CORE)
    read = (
        say("Last read: {reading}, {span} ago.", reading=one(last, a), span=numbers.span(a.now - last.at))
        if last
        else ""
    )
    by_hand = say(
        "Read it by hand now: an instant one at the thickest spot, tested in boiling water, and send me the number.\n"
        "Time alone tells nothing of the core; unread, it is not served."
    )
    return f"{by_hand}\n{read}".strip()


def got(a: Assessment, value: float) -> str:
    """Whether a number stands in the record, when, and what is the newest of its place."""
    shown = {r: numbers.temperature(r.celsius, a.person).split(" ")[0] for r in a.batch.readings}
    found = [r for r, number in shown.items() if abs(float(number.replace(",", ".")) - value) < 0.5]
    if not found:
        return say("{value} is not in the record. {last}", value=numbers.plain(value), last=last_reading(a, None))
    last = found[-1]
    newest = a.batch.of_probe(last.probe)[-1]
    if newest is last:
        return say("Yes: {reading}. It is the newest. {next}", reading=one(last, a), next=plans.coming(a)).strip()
    return say(
        "Yes: {reading}. The newest is {newest}. {next}",
        reading=one(last, a),
        newest=one(newest, a),
        next=plans.coming(a),
    ).strip()


def reading_at(a: Assessment, probe: Probe | None, at: datetime) -> str:
    """What was read nearest to an hour that is past."""
    seen = [r for r in (a.batch.of_probe(probe) if probe else a.batch.readings) if r.at <= a.now]
    if not seen:
        return last_reading(a, probe)
    nearest = min(seen, key=lambda r: abs(r.at - at))
    beside = [r for r in seen if r.at == nearest.at]
    read = ", ".join(one(r, a) for r in beside)
    return say("Nearest to {at}: {read}.", at=numbers.when(at, a.person, a.now), read=read)


def one(r: Reading, a: Assessment) -> str:
    """«core 55 °C at 11:00»."""
    return say(
        "{place} {celsius} at {at}",
        place=readings.PLACES[r.probe],
        celsius=numbers.temperature(r.celsius, a.person),
        at=numbers.when(r.at, a.person, a.now),
    )


def fridge(a: Assessment) -> str:
    """Every reading of the fridge, and which were too warm; how long nobody has read it."""
    seen = a.batch.of_probe(Probe.FRIDGE)
    if not seen:
        return say("Nobody has read the fridge yet: put a thermometer in a glass of water beside the bag, and send it.")
    last = seen[-1]
    warm = [r for r in seen if r.celsius > COLD]
    lead = say(
        "The fridge read {celsius} {when}, {span} ago.",
        celsius=numbers.temperature(last.celsius, a.person),
        when=numbers.when(last.at, a.person, a.now),
        span=numbers.span(a.now - last.at),
    )
    earlier = ", ".join(
        f"{numbers.when(r.at, a.person, a.now)} {numbers.temperature(r.celsius, a.person)}"
        for r in seen[-SHOWN - 1 : -1]
    )
    before = say("Before: {earlier}.", earlier=earlier) if earlier else ""
    return "\n".join(line for line in (lead, before, _too_warm(warm, a)) if line)


def _too_warm(warm: list[Reading], a: Assessment) -> str:
    limit = numbers.both(4.4, a.person)
    if not warm:
        return say(
            "All at {limit} or below. If it felt warm since then, read it now: more than 2 h above that is too long.",
            limit=limit,
        )
    return say_n(
        "{n} reading was above {limit}: ask «is it safe».",
        "{n} readings were above {limit}: ask «is it safe».",
        len(warm),
        n=len(warm),
        limit=limit,
    )


def weight(a: Assessment) -> str:
    """What it weighed raw, and finished where that was said."""
    setup = a.batch.setup
    pieces = say_n(", {n} piece", ", {n} pieces", setup.pieces, n=setup.pieces) if setup.pieces > 1 else ""
    raw = say("{mass} raw and trimmed, as you said{pieces}.", mass=numbers.mass(setup.mass, a.person), pieces=pieces)
    after = a.batch.weighed_after
    done = say("Finished {mass}.", mass=numbers.mass(after, a.person)) if after is not None else ""
    return f"{raw} {done}".strip()


def cure_in(a: Assessment, at: datetime | None, who: str) -> str:
    """Whether the cure went in: when, how much, by whom; and that there is no dose on a guess."""
    if a.batch.setup.nitrite_target == 0.0:
        return say("No curing salt goes into this one: it is only salted.")
    if at is None:
        return say(
            "Not noted: no cure is in, as far as I know.\n"
            "Never add it on a guess. Ask who was there, and weigh the packet: what is missing from it is in the meat.\n{dose}",
            dose=doses.dose(a),
        ).strip()
    when = numbers.when(at, a.person, a.now)
    lead = (
        say("Yes, it went in {when}, by {who}.", when=when, who=who)
        if who
        else say("Yes, it went in {when}.", when=when)
    )
    return say("{lead} Add no second dose.\n{dose}", lead=lead, dose=doses.dose_in(a) or doses.dose(a))


def dosed_at(a: Assessment) -> datetime | None:
    """When the cure was weighed in, or went in with the meat."""
    done = a.batch.done
    return done.get(Kind.BRINE.value) or done.get(Kind.INTO_CURE.value)


def is_cured(a: Assessment) -> str:
    """Whether nitrite is in it, and what that means for cooling and keeping."""
    setup = a.batch.setup
    if setup.nitrite_target == 0.0 or uncured(a.batch, a.dose):
        return say(
            "{what}: not cured, only salted. It cools and keeps by the stricter rules of plain meat.",
            what=meats.what(a),
        )
    if a.dose is None and setup.cure_nitrite_fraction is not None:
        return plans.now(a)
    if a.dose is None:
        return say("{what}: to be cured, but nobody has said how strong the curing salt is.", what=meats.what(a))
    raw = "" if "meat_on" in a.batch.done else say("It is raw till it is cooked all the same.")
    nitrite = numbers.ppm(a.dose.nitrite_ingoing)
    return say("{what}: cured, {nitrite} nitrite. {raw}", what=meats.what(a), nitrite=nitrite, raw=raw).strip()


def method(a: Assessment) -> str:
    """How it is cured."""
    said = say(
        "It is cured {way}. Before it goes in that can be changed.",
        way=WAYS[a.batch.setup.method],
    )
    if a.batch.phase is not Phase.WAITING:
        return said
    return f"{said}\n" + say("Say «make it wet» or «make it dry», and dose and days are worked out anew.")


def strength(a: Assessment) -> str:
    """Which curing salt the sums go by."""
    said = a.batch.setup.cure_nitrite_fraction
    if said is None:
        return say("Nobody has said it yet. Read the packet: its nitrite in percent, like «cure is 6.25 %».")
    return say(
        "{strength} nitrite, as you said. Compare it with the packet; another is typed like «cure is 6.25 %».",
        strength=numbers.percent(said),
    )


def _fridge(a: Assessment) -> str:
    """How cold it is kept, by its line of the chart: fish colder than meat."""
    return numbers.at_most(keeping(a.ledger.record.product_class).fridge_c, a.person)


def keeps(a: Assessment) -> str:
    """Until when it keeps, by its step or from the storage chart."""
    step = a.plan.step(Kind.USE_BY.value) if a.plan else None
    kind = a.ledger.verdict.kind
    if a.batch.off_at is not None and kind not in (Outcome.SAFE, Outcome.NOT_YET):
        return _not_shown(a, step if kind is Outcome.CANNOT_SAY else None)
    if step is None:
        return plans.now(a)
    if a.batch.phase in (Phase.WAITING, Phase.CURING, Phase.DRYING):
        return say(
            "{what} is raw yet: nothing of it to eat.\nCooked and chilled as planned: use it by {when}, kept at {limit} or below.",
            what=meats.what(a),
            when=numbers.day(step.due, a.person),
            limit=_fridge(a),
        )
    return say(
        "{what}: use it by {when}, kept at {limit} or below. Freeze what is over by then.",
        what=meats.what(a),
        when=numbers.day(step.due, a.person),
        limit=_fridge(a),
    )


def _not_shown(a: Assessment, step: Step | None) -> str:
    """The verdict, since a date alone would be taken for leave to keep it; the last day where it can still be cleared."""
    if step is None:
        return safety.verdict(a)
    last = say(
        "Its last day would be {when}, at {limit} or below, or frozen by then; but that is not shown yet.",
        when=numbers.day(step.due, a.person),
        limit=_fridge(a),
    )
    return f"{last}\n{safety.verdict(a)}"
