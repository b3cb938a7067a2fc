"""Words of the record of a batch: what a cook prints, keeps, or shows to whoever asks what was done."""

from collections.abc import Sequence
from datetime import timedelta

from bot.intents.intents import Ask
from bot.paper import Paper, Section, Table
from bot.wording import (
    asking,
    brines,
    cautions,
    cooling,
    doses,
    language,
    meats,
    numbers,
    plans,
    safety,
    steps,
)
from bot.wording.cited import known
from bot.wording.language import Words, decimal, later, say
from bot.wording.readings import PLACES
from bot.wording.recorded import degrees, note, stamp, what, who
from core.batch.batch_record import BatchRecord, DoseSum, Entry, VerdictThen
from core.batch.events import Read
from core.cure.dose import Dose
from core.safety.cautions import for_step
from core.safety.cooling import StageJudgement
from core.safety.cooling_rules import Use
from core.safety.findings import Finding, Outcome, Rule, Status

NOTHING = "-"
NO_LICENCE = later(
    "This is a log for the cook, written by a chat bot from what was said to it. It is no licence, no inspection and no "
    "plan that an authority has approved."
)
WEIGHED = Words(
    {
        "meat": "meat, trimmed and raw",
        "cure": "curing salt of {strength} nitrite",
        "salt": "salt",
        "sugar": "sugar",
        "water": "water",
        "after": "finished, weighed",
    }
)
FORMS = (("pdf", "PDF"), ("html", "HTML"), ("csv", "CSV"), ("json", "JSON"))


def said(name: str, form: str) -> str:
    """What stands under a record that is sent."""
    if form in ("pdf", "html"):
        return say(
            "Keep this record, or print it: «{name}» with its log, dose, temperatures and verdict.\n"
            "It is a log for you; it is no licence.",
            name=name,
        )
    return say(
        "Here is the record as plain figures: «{name}» with its log, dose, temperatures and verdict.\n"
        "It is a log for you; it is no licence.",
        name=name,
    )


def not_taken() -> str:
    """Where a channel cannot take the file."""
    return say("The file did not go through here. Ask for a smaller one, like «record csv».")


def nothing_yet() -> str:
    """A record is wanted where nothing was ever begun."""
    return say(
        "There is no batch here to make a record of. Start with the cut and the weight, like «3.2 kg brisket flat for saturday 13:00»."
    )


def forms(batch: str, had: str) -> asking.Rows:
    """The other forms, a tap each."""
    return (tuple(asking.button(name, Ask("record", form, batch=batch)) for form, name in FORMS if form != had),)


def of_others(others: Sequence[tuple[str, str]], form: str) -> asking.Rows:
    """The record of another batch, where it may be that which was meant."""
    row = tuple(asking.button(say("Of «{name}»", name=name), Ask("record", form, batch=key)) for key, name in others)
    return (row,) if row else ()


def record(r: BatchRecord) -> Paper:
    """The whole record, in the units and on the clock of whose batch it is."""
    parts = (_batch(r), _verdict(r), _dose(r), _log(r), _temperatures(r), _cooling(r), _sources(r))
    return Paper(
        title=say("Record of «{name}»", name=r.a.batch.name),
        lead=(say(NO_LICENCE), verdict(r)),
        sections=tuple(part for part in parts if part is not None),
        foot=(
            say("It knows only what was said: what nobody read or told is not in it."),
            *(cautions.say(caution) for caution in for_step("record")),
        ),
        made_at=r.made_at,
        page=say("Page {page} of {pages}"),
        left_out=say("The first {rows} rows are left out in print; «record csv» has them all."),
        language=language.spoken(),
    )


def verdict(r: BatchRecord) -> str:
    """The verdict as of the time of the record, in a sentence."""
    return safety.lead(r.a.ledger.verdict)


def _batch(r: BatchRecord) -> Section:
    a, owner = r.a, r.owner
    way = say("Salted, without nitrite.") if meats.plain(a) else plans.METHODS[a.batch.setup.method]
    begun = say(
        "Begun {when} by {who}; the clock is that of {zone}.",
        when=stamp(a.batch.started, r),
        who=who(owner, r) if owner else NOTHING,
        zone=a.person.zone,
    )
    judged = say("Judged as of {then}; written {now}.", then=stamp(r.as_of, r), now=stamp(r.made_at, r))
    lines = (f"{meats.what(a)}: {way}", begun, _piece(r), *_in_the_cure(r), judged)
    return Section(say("The batch"), lines)


def _piece(r: BatchRecord) -> str:
    thickness = numbers.length(r.a.piece.thickness, r.a.person)
    measured = say("measured") if r.a.piece.measured else say("guessed from the weight")
    intact = say("intact") if r.a.piece.intact else say("not intact (injected, pierced, rolled or boned)")
    return say(
        "Thickness {thickness}, {measured}; the meat is {intact}.",
        thickness=thickness,
        measured=measured,
        intact=intact,
    )


def _in_the_cure(r: BatchRecord) -> tuple[str, ...]:
    done = r.a.batch.done
    into, out = done.get("into_cure"), done.get("out")
    if into is None:
        return ()
    if out is None:
        return (say("Into the cure {into}.", into=stamp(into, r)), doses.days(r.a))
    days = decimal((out - into) / timedelta(days=1), 1)
    return (say("Into the cure {into}, out {out}: {days} days.", into=stamp(into, r), out=stamp(out, r), days=days),)


def _verdict(r: BatchRecord) -> Section:
    rows = tuple(finding(f, r) for f in r.a.ledger.verdict.because)
    head = (say("Rule"), say("How it stands"), say("Value and limit"), say("Readings that decided"), say("Source"))
    lines = tuple(_then(v, r) for v in r.verdicts)
    return Section(say("Verdict and rules"), lines, Table(head, rows, (30, 16, 18, 26, 30)))


def _then(v: VerdictThen, r: BatchRecord) -> str:
    by = "" if v.verdict.kind is Outcome.SAFE else f" ({safety.RULES[v.verdict.deciding.rule]})"
    return f"{stamp(v.at, r)}, {steps.name_of(v.step)}: {safety.lead(v.verdict)}{by}"


def finding(f: Finding, r: BatchRecord) -> tuple[str, ...]:
    """One rule of the ledger: its name, how it stands, value and limit, the readings that decided, its source."""
    name, state = safety.RULES[f.rule], safety.STATES[f.status]
    if f.deadline is not None and f.status is Status.OPEN:
        state += say(", by {deadline}", deadline=stamp(f.deadline, r))
    read = ";\n".join(f"{degrees(x.celsius, r)}, {stamp(x.at, r)}" for x in f.readings[-2:])
    return (f"{name[0].upper()}{name[1:]}", state, _amount(f, r), read or NOTHING, safety.source(f.source).strip("()"))


def _amount(f: Finding, r: BatchRecord) -> str:
    """A value and its limit; of a kill that is met no more than the table vouches for."""
    if f.value is None or f.limit is None:
        return NOTHING
    if f.unit == "log" and f.status is Status.PASSED:
        return say("{limit} log or more", limit=numbers.plain(f.limit))
    if f.rule is Rule.VACUUM_FISH:
        return say("{value}; {limit} at most", value=degrees(f.value, r), limit=degrees(f.limit, r))
    if f.unit == "°C":
        return say("{value}; {limit} at least", value=degrees(f.value, r), limit=degrees(f.limit, r))
    unread = f.rule is Rule.FRIDGE and f.unit == "h" and f.status is Status.PASSED
    return say("unread for ") + safety.against(f, r.a) if unread else safety.against(f, r.a)


def _dose(r: BatchRecord) -> Section:
    d, title = r.a.dose, say("Weights and dose")
    if d is None:
        return Section(
            title, (say("No dose was given: the strength of the curing salt is not known, or no law lets it pass."),)
        )
    lines = dose_lines(r) if r.dose is not None else (brines.salt_alone(d, r.a.batch.setup),)
    return Section(title, lines, Table((say("What"), say("Weight")), _weights(d, r), (70, 30)))


def _weights(d: Dose, r: BatchRecord) -> tuple[tuple[str, ...], ...]:
    after, person = r.a.batch.weighed_after, r.a.person
    parts = (("cure", d.cure_kg), ("salt", d.salt_kg), ("sugar", d.sugar_kg), ("water", d.water_kg))
    strength = numbers.percent(d.nitrite_fraction)
    rows = [(WEIGHED["meat"], numbers.mass(r.a.batch.setup.mass, person))]
    rows += [(WEIGHED[name].format(strength=strength), numbers.grams(mass)) for name, mass in parts if mass]
    rows += [(WEIGHED["after"], numbers.mass(after, person))] if after is not None else []
    return tuple(rows)


def dose_lines(r: BatchRecord) -> tuple[str, ...]:
    """The sum of the dose, step by step, and the limit that it is held to."""
    d, total = r.a.dose, r.dose
    if d is None or total is None or d.limit is None:
        return ()
    cure, share = numbers.grams(d.cure_kg), numbers.percent(d.nitrite_fraction)
    milligrams, going_in = f"{total.nitrite_kg * 1e6:.0f} mg", numbers.ppm(d.nitrite_ingoing)
    limit, where = numbers.ppm(d.limit.max_mg_kg), f"{d.limit.jurisdiction}, {d.limit.where}"
    memory = say(", from memory") if d.limit.status == "MEMORY" else ""
    within = d.limit.passes(d.nitrite_ingoing)
    return (
        say("In the cure") if r.a.batch.dosed is not None else say("To be weighed out"),
        f"{cure} × {share} = {milligrams} NaNO₂",
        f"{milligrams} ÷ {_base(total)} = {going_in}",
        say("Limit {limit} ({where}{memory}): within it.", limit=limit, where=where, memory=memory)
        if within
        else say("Limit {limit} ({where}{memory}): over it.", limit=limit, where=where, memory=memory),
        say("Salt {share} of meat and water.", share=numbers.percent(d.salt_fraction)),
    )


def _base(total: DoseSum) -> str:
    """What the nitrite is counted in, with its own sum."""
    meat, pickle, base = (f"{decimal(kg, 3)} kg" for kg in (total.meat_kg, total.pickle_kg, total.base_kg))
    match total.base:
        case "meat_and_pickle":
            return say("({meat} meat + {pickle} pickle = {base})", meat=meat, pickle=pickle, base=base)
        case "pump":
            share = numbers.percent(total.pumped or 0.0)
            return say("{pickle} pickle × {share} of its weight taken up", pickle=pickle, share=share)
        case _:
            return say("{meat} green meat", meat=meat)


def _log(r: BatchRecord) -> Section:
    rows = tuple(
        (stamp(e.at, r), who(r.member(e.by), r), what(e, r), note(e, r))
        for e in r.entries
        if not isinstance(e.said, Read)
    )
    head = (say("When"), say("Who"), say("What"), say("Note"))
    return Section(say("What was done"), table=Table(head, rows, (24, 16, 42, 28)))


def _temperatures(r: BatchRecord) -> Section:
    rows = tuple(
        (stamp(e.at, r), who(r.member(e.by), r), *_read(e, r), note(e, r))
        for e in r.entries
        if isinstance(e.said, Read)
    )
    if not rows:
        return Section(say("Temperatures"), (say("No temperature was read."),))
    head = (say("When"), say("Who"), say("Where"), say("Temperature"), say("Note"))
    return Section(say("Temperatures"), table=Table(head, rows, (24, 16, 12, 16, 32)))


def _read(entry: Entry, r: BatchRecord) -> tuple[str, str]:
    event = entry.what or entry.said
    return (PLACES[event.probe], degrees(event.celsius, r)) if isinstance(event, Read) else (NOTHING, what(entry, r))


def _cooling(r: BatchRecord) -> Section | None:
    found = r.a.ledger.cooling
    lines = tuple(line for line in (safety.cooling_numbers(r.a), cooling.stands(r.a)) if line)
    if found is None:
        return Section(say("Kill and cooling"), lines) if lines else None
    shown = [found.decided_by, *(j for j in found.rules if j.rule.use is Use.GRANTS and j is not found.decided_by)]
    rows = tuple((safety.source(j.rule.source).strip("()"), *_stage(s, r)) for j in shown for s in j.stages)
    head = (say("Rule"), say("Stage"), say("How it stands"), say("Hours"), say("From and to"))
    return Section(say("Kill and cooling"), lines, Table(head, rows, (34, 20, 16, 16, 34)))


def _stage(s: StageJudgement, r: BatchRecord) -> tuple[str, str, str, str]:
    span = say(
        "{warm} to {cold} °F in {hours}",
        warm=f"{s.stage.from_f:.0f}",
        cold=f"{s.stage.to_f:.0f}",
        hours=numbers.hours(s.stage.max_h),
    )
    ends = (f"{degrees(x.celsius, r)}, {stamp(x.at, r)}" for x in (s.started, s.ended) if x is not None)
    hours = numbers.hours(s.hours_at_most) if s.started else NOTHING
    return span, safety.STATES[s.status], hours, ";\n".join(ends) or NOTHING


def _sources(r: BatchRecord) -> Section:
    found = [f.source for f in r.a.ledger.verdict.because] + list(r.a.dose.sources if r.a.dose else ())
    lines = (f"{s.title}, {s.where} ({known(s)})" for s in dict.fromkeys(found))
    return Section(say("Sources"), tuple(lines))
