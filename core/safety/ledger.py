"""The safety ledger: everything that a record says, rule by rule, and the verdict.

The worst finding wins. What the record cannot prove is `cannot_say`, and that is never safe. Times and
readings may come late and in any order: the ledger is a pure function of the record.
"""

from dataclasses import dataclass
from datetime import datetime

from core.safety.after import after_findings, cooling, use_by_of
from core.safety.cautions import Caution, caution
from core.safety.cook import cook_lethality
from core.safety.cooling import CoolingVerdict
from core.safety.findings import Finding, Outcome, Rule, Status, worst
from core.safety.heat import heat_findings
from core.safety.incidents import judge_incident
from core.safety.lethality import Lethality
from core.safety.raw import raw_findings
from core.safety.record import Incident, Record
from core.safety.storage import UseBy
from core.units import Fahrenheit, celsius_from_fahrenheit

__all__ = ["Incident", "Record", "Verdict", "Wanted", "verdict"]

WELL_SHOWN_F: Fahrenheit = 135.0  # under it the table was not shown to be enough; sources.MCMINN_2018


@dataclass(frozen=True)
class Wanted:
    """A reading or fact that would settle a rule, and by when it is wanted (aware)."""

    what: str
    rule: Rule | None
    by: datetime | None


@dataclass(frozen=True)
class Verdict:
    """What is to be done with the meat, and why: the findings, the gravest first."""

    kind: Outcome
    because: tuple[Finding, ...]
    missing: tuple[Wanted, ...]
    cautions: tuple[Caution, ...]
    lethality: Lethality | None
    cooling: CoolingVerdict | None
    use_by: UseBy | None

    @property
    def deciding(self) -> Finding:
        """The finding that decided."""
        return self.because[0]

    def of(self, rule: Rule) -> tuple[Finding, ...]:
        """What a rule found."""
        return tuple(f for f in self.because if f.rule is rule)


def verdict(record: Record) -> Verdict:
    """What the record proves.

    Parameters
    ----------
    record
        The batch as it is known.

    Returns
    -------
    The verdict at `record.now`, with every finding, what is missing, and the cautions that matter now.

    Raises
    ------
    Missing
        A time without a zone.
    OutOfRange
        A reading that no thermometer shows.
    """
    found = _findings(record)
    kind = worst(f.means for f in found)
    because = tuple(sorted(found, key=_gravity, reverse=True))
    off = record.off_at is not None and record.off_at <= record.now
    kill = cook_lethality(record)
    return Verdict(
        kind=kind,
        because=because,
        missing=_missing(record, because),
        cautions=_cautions(record, because, kill),
        lethality=kill,
        cooling=cooling(record) if off else None,
        use_by=use_by_of(record),
    )


def _findings(record: Record) -> tuple[Finding, ...]:
    incidents = (judge_incident(i, record) for i in record.incidents if i.at <= record.now)
    heat = heat_findings(record)
    back_on = any(f.advice == "back_on_now" for f in heat)  # it goes on cooking: nothing is chilled or kept
    after = () if back_on else after_findings(record)
    return (*raw_findings(record), *heat, *after, *(f for f in incidents if f is not None))


def _gravity(finding: Finding) -> tuple[int, int]:
    statuses = (Status.PASSED, Status.OPEN, Status.UNKNOWN, Status.FAILED)
    return tuple(Outcome).index(finding.means), statuses.index(finding.status)


def _missing(record: Record, found: tuple[Finding, ...]) -> tuple[Wanted, ...]:
    """Each missing thing once, for the gravest rule that wants it."""
    wanted: dict[str, Wanted] = {}
    for finding in found:
        if finding.missing:
            wanted.setdefault(finding.missing, Wanted(finding.missing, finding.rule, finding.deadline))
    eaters = () if record.at_risk_eaters is not None else (Wanted("at_risk_eaters", None, None),)
    return (*wanted.values(), *eaters)


def _cautions(record: Record, found: tuple[Finding, ...], kill: Lethality | None) -> tuple[Caution, ...]:
    bad = {f.rule for f in found if f.means in (Outcome.CANNOT_SAY, Outcome.THROW_AWAY)}
    eat_now = any(f.means is Outcome.EAT_NOW for f in found)
    keys = {
        "reheating_is_no_repair": bool(bad),
        "smell_proves_nothing": bool(bad),
        "non_intact": not record.whole,
        "poultry_own_table": record.bird,
        "low_rows_not_shown": kill is not None and _by_low_rows(kill),
        "at_risk_reheat": record.at_risk_eaters is not False and record.off_at is not None,
        "not_for_at_risk": eat_now,
        "danger_zone": eat_now,
    }
    return tuple(caution(key) for key, matters in keys.items() if matters)


def _by_low_rows(kill: Lethality) -> bool:
    """Whether the kill rests on rows under which the table was not shown to be enough."""
    return kill.met and min(r.celsius for r in kill.deciding) < celsius_from_fahrenheit(WELL_SHOWN_F)
