"""The facts behind a reply, as flat data in SI units with the unit in the name: for tests, scripts and records."""

from typing import Any

from core.batch.assess import Assessment
from core.batch.events import Probe
from core.cure.dose import Dose
from core.plan.steps import State, Step, TimeBand
from core.sources import Source


def facts(a: Assessment) -> dict[str, Any]:
    """Everything that is known of a batch at the time of a reply."""
    found: dict[str, Any] = {"batch": a.batch.id, "batch_name": a.batch.name, "phase": a.batch.phase.value}
    for part in (_piece, _dose, _cure, _cook, _safety, _plan):
        found |= part(a)
    return found


def _piece(a: Assessment) -> dict[str, Any]:
    setup = a.batch.setup
    return {
        "product": setup.product,
        "cut": setup.cut,
        "method": setup.method,
        "mass_kg": setup.mass,
        "thickness_m": a.piece.thickness,
        "thickness_measured": a.piece.measured,
        "target_c": setup.target_c,
        "pit_set_c": setup.pit_c,
        "intact": a.piece.intact,
    }


def _dose(a: Assessment) -> dict[str, Any]:
    d = a.dose
    if d is None:
        return {}
    return {
        "cure_kg": d.cure_kg,
        "salt_kg": d.salt_kg,
        "sugar_kg": d.sugar_kg,
        "water_kg": d.water_kg,
        "cure_nitrite_fraction": d.nitrite_fraction,
        "nitrite_ingoing_mg_kg": d.nitrite_ingoing,
        "salt_fraction": d.salt_fraction,
        **({} if d.nitrite_by_pickup is None else {"nitrite_by_pickup_mg_kg": d.nitrite_by_pickup}),
        **_limit(d),
    }


def _limit(d: Dose) -> dict[str, Any]:
    """The limit that the dose is held to; none where no nitrite goes in."""
    if d.limit is None:
        return {}
    return {
        "nitrite_limit_mg_kg": d.limit.max_mg_kg,
        "nitrite_limit_source": d.limit.where,
        "jurisdiction": d.limit.jurisdiction,
    }


def _cure(a: Assessment) -> dict[str, Any]:
    if a.cure is None:
        return {}
    found: dict[str, Any] = {
        "cure_days_p10": a.cure.days_p10,
        "cure_days_p50": a.cure.days_p50,
        "cure_days_p90": a.cure.days_p90,
        "cure_days_advice": a.cure.advice,
    }
    after = a.after_cure()
    if after is not None and a.plan is not None:
        found |= {
            "cure_days_planned": a.plan.cure_days,
            "salt_mean_fraction": after.salt_mean.p50,
            "salt_centre_fraction": after.salt_centre.p50,
            "nitrite_centre_mg_kg": after.nitrite_centre.p50,
            "pink_probability": after.probability_pink,
        }
    return found


def _cook(a: Assessment) -> dict[str, Any]:
    if a.cook is None:
        return {}
    found: dict[str, Any] = {
        "cook_hours_p10": a.cook.ready.p10,
        "cook_hours_p50": a.cook.ready.p50,
        "cook_hours_p90": a.cook.ready.p90,
        "stall": a.cook.stall.phase,
    }
    ready = a.ready or _planned_off(a)
    if ready is not None:
        found |= {"ready_at_p10": _iso(ready.p10), "ready_at_p50": _iso(ready.p50), "ready_at_p90": _iso(ready.p90)}
    for probe in (Probe.CORE, Probe.PIT, Probe.FRIDGE, Probe.BRINE):
        last = a.batch.last(probe)
        if last is not None:
            found |= {f"{probe.value}_c": last.celsius, f"{probe.value}_at": _iso(last.at)}
    return found


def _planned_off(a: Assessment) -> TimeBand | None:
    off = a.plan.step("off") if a.plan else None
    if off is None or off.early is None or off.late is None or off.state in (State.DONE, State.SKIPPED):
        return None
    return TimeBand(off.early, off.due, off.late)


def _safety(a: Assessment) -> dict[str, Any]:
    v, kill, chill = a.ledger.verdict, a.ledger.lethality, a.ledger.cooling
    found: dict[str, Any] = {
        "verdict": v.kind.value,
        "findings": [f"{f.rule.value}: {f.status.value}" for f in v.because],
        "cautions": sorted({c.key for c in v.cautions} | {c.key for c in (a.dose.cautions if a.dose else ())}),
        "sources": sorted({_title(f.source) for f in v.because} | _dose_sources(a)),
    }
    if kill is not None:
        credited = min(kill.log_reduction, kill.required_log)  # the tables vouch for no more than they print
        found |= {"log_reduction": credited, "log_required": kill.required_log}
    if chill is not None and chill.decided_by is not None:
        found |= {"cooling_rule": chill.decided_by.rule.key, "cooling_status": chill.decided_by.status.value}
    return found


def _dose_sources(a: Assessment) -> set[str]:
    return {_title(s) for s in a.dose.sources} if a.dose else set()


def _title(source: Source) -> str:
    return f"{source.title} ({source.year}, {source.status})"


def _plan(a: Assessment) -> dict[str, Any]:
    if a.plan is None:
        return {}
    found: dict[str, Any] = {
        "serve_at": _iso(a.plan.serve),
        "late_s": a.plan.late.total_seconds(),
        "plan": [{"step": s.key, "due": _iso(s.due), "state": s.state.value} for s in a.plan.steps],
    }
    step = a.plan.next_step()
    return found | ({} if step is None else step_facts(step))


def step_facts(step: Step) -> dict[str, Any]:
    """The step that a reply is about, or that comes next."""
    return {"step": step.key, "step_kind": step.kind.value, "due": _iso(step.due)}


def _iso(moment: Any) -> str:
    return str(moment.isoformat())
