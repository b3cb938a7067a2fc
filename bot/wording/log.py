"""Words for what was said and read before: the dose, the thickness, the pit, the yield, the last lines of the log."""

from datetime import datetime
from statistics import fmean

from bot.wording import cautions, debriefs, doses, fire, numbers, readings, steps
from bot.wording.language import say
from core.batch.assess import Assessment
from core.batch.events import Probe


def of_log(a: Assessment, topic: str) -> str:
    """What was said and read before."""
    match topic:
        case "dose":
            return _dose(a) or say("There is no dose yet: I need the nitrite in percent that your packet states.")
        case "thickness":
            said = say("you said") if a.piece.measured else say("nobody measured; I guess")
            return say(
                "{thickness}, {said} ({thickness_low} to {thickness_high}).",
                thickness=numbers.length(a.piece.thickness, a.person),
                said=said,
                thickness_low=numbers.length(a.piece.thickness_low, a.person),
                thickness_high=numbers.length(a.piece.thickness_high, a.person),
            )
        case "pit":
            return _pit(a)
        case "relit":
            return _relit(a)
        case "yield":
            return _yield(a)
        case "cautions":
            return cautions.every(a)
        case _:
            return _log(a)


def _dose(a: Assessment) -> str:
    """The dose, or what went in where that was told; once the meat is in it that no second one follows."""
    told = doses.dose_in(a) if "put_in_cure" in a.batch.put_in else doses.dose(a)
    into = a.batch.done.get("into_cure")
    if into is None or not told or a.dose is None or a.dose.limit is None:
        return told
    lead = say("It went in {when}: no second dose on the same meat.", when=numbers.when(into, a.person, a.now))
    return f"{lead}\n{told}"


def _pit(a: Assessment) -> str:
    seen = a.batch.of_probe(Probe.PIT)[-5:]
    if not seen:
        return say("No pit readings yet; it is set for {pit}.", pit=numbers.temperature(a.batch.setup.pit_c, a.person))
    said = ", ".join(f"{numbers.clock(r.at, a.person)} {numbers.temperature(r.celsius, a.person)}" for r in seen)
    if len(seen) > 1:
        mean = numbers.temperature(fmean(r.celsius for r in seen), a.person)
        said = say("{said}; on the average {mean}", said=said, mean=mean)
    return say("The pit: {said}. {advice}", said=said, advice=fire.advice(a)).strip()


def _relit(a: Assessment) -> str:
    """The fire burns again: whether the meat may go on is told by its core."""
    if a.ledger.thrown:
        return say("A new fire does not mend what was too warm for too long: put nothing of it back on.")
    example = "158/245" if a.person.units.temperature == "f" else "70/120"
    return say(
        "Good. Read core and pit now, and reply like {example}: the core tells whether it may go on.\n"
        "Then once more in 20 min; the pit climbs slowly on a new fire.",
        example=example,
    )


def _yield(a: Assessment) -> str:
    after = a.batch.weighed_after
    if after is not None:
        return say(
            "{after}: {after2} of {mass}.",
            after=numbers.share(after / a.batch.setup.mass),
            after2=numbers.mass(after, a.person),
            mass=numbers.mass(a.batch.setup.mass, a.person),
        )
    if a.cook is None:
        return say("Nothing is weighed yet.")
    low, high = 1 - a.cook.loss.p90, 1 - a.cook.loss.p10
    return say(
        "Not weighed yet; I expect {least} to {most} of {mass} to be left after the fire, {low} to {high}.",
        least=numbers.mass(low * a.batch.setup.mass, a.person),
        most=numbers.mass(high * a.batch.setup.mass, a.person),
        low=numbers.share(low),
        high=numbers.share(high),
        mass=numbers.mass(a.batch.setup.mass, a.person),
    )


def _log(a: Assessment) -> str:
    lines = [f"{numbers.when(at, a.person, a.now)} {name}" for at, name in sorted(_events(a))[-12:]]
    return say("The last of the log:\n{lines}", lines="\n".join(lines)) if lines else say("Nothing is in the log yet.")


def _events(a: Assessment) -> list[tuple[datetime, str]]:
    done = [(at, say("{name_of}: done", name_of=steps.called(key, a))) for key, at in a.batch.done.items()]
    read = [(r.at, f"{readings.PLACES[r.probe]} {numbers.temperature(r.celsius, a.person)}") for r in a.batch.readings]
    given = [] if a.batch.rated is None else [(a.batch.rated[0], debriefs.marked(a))]
    return [*done, *read, *given]
