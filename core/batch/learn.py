"""What one batch teaches its cook: how fast their meat cures, how salty they like it, how their cooker runs.

Learned from the log alone, from the house defaults on, batch by batch: a correction of an old batch re-teaches.
"""

from dataclasses import replace
from datetime import timedelta
from math import exp, log

from core.batch import material
from core.batch.batch import Batch
from core.batch.weighed import dose_in, is_told
from core.cure.learning import from_slice, from_taste
from core.errors import SaltbellError
from core.heat.carried import LEAST_READINGS, habits
from core.heat.cook import History
from core.person import Learned, Person, Runs

POT = "pot"  # simmers: no air, no offset
COOK_PRIOR_SD = 0.22  # ln(true / predicted hours) over cookers, as the model's own band has it; TUNED
COOK_NOISE_SD = 0.15  # from cook to cook on one cooker; judgement


def learned_from(batch: Batch, person: Person, learned: Learned) -> Learned:
    """What is known of a person after one more of their batches."""
    after = _of_slice(batch, person, learned)
    if batch.tasted is not None:
        after = from_taste(after, batch.tasted)
    after = _of_cook(batch, person, after)
    return after if after == learned else replace(after, batches=learned.batches + 1)


def _of_slice(batch: Batch, person: Person, learned: Learned) -> Learned:
    into, out = batch.done.get("into_cure"), batch.done.get("out")
    seen, strength = batch.sliced, batch.setup.cure_nitrite_fraction
    if seen is None or seen.grey is None or into is None or out is None or strength is None or not is_told(batch):
        return learned
    try:
        immersion = material.immersion_of(batch.setup, dose_in(batch, person.jurisdiction), Learned())
        return from_slice(learned, immersion, (out - into) / timedelta(days=1), seen.grey, seen.of)
    except SaltbellError:  # a slice or a dose that cannot be (wider grey than meat) teaches nothing
        return learned


def _of_cook(batch: Batch, person: Person, learned: Learned) -> Learned:
    """What a cook that is over says of its cooker: by its readings, else by its hours alone."""
    on, off = batch.done.get("meat_on"), batch.off_at
    if on is None or off is None or off <= on:
        return learned
    history = material.history_of(batch, off)
    if len(history.of("core")) >= LEAST_READINGS and batch.setup.cooker != POT:
        return _of_readings(batch, person, (learned, history))
    return learned if "wrap" in batch.done else _of_hours(batch, person, learned)


def _of_readings(batch: Batch, person: Person, known: tuple[Learned, History]) -> Learned:
    """The habits of the cooker, moved by the readings."""
    learned, history = known
    kind = batch.setup.cooker
    before = learned.of_cooker(kind)
    cook = replace(material.cook_of(batch, replace(person, learned=Learned())), habits=before.habits if before else ())
    after = Runs(kind, habits(cook, history), 1 + (before.cooks if before else 0))
    return replace(learned, cookers=(*(runs for runs in learned.cookers if runs.cooker != kind), after))


def _of_hours(batch: Batch, person: Person, learned: Learned) -> Learned:
    """The cooker's own pace, by the normal update of ln(true hours / predicted hours)."""
    on, off = batch.done["meat_on"], batch.off_at or batch.done["meat_on"]
    plain = replace(person, learned=Learned())
    predicted = material.estimate_of(replace(batch, readings=(), done={}), plain, on).ready.p50
    seen = log((off - on) / timedelta(hours=1) / predicted)
    prior_sd = learned.cook_log_sd or COOK_PRIOR_SD
    gain = prior_sd**2 / (prior_sd**2 + COOK_NOISE_SD**2)
    shift = learned.cook_log_shift + gain * (seen - learned.cook_log_shift)
    return replace(learned, cook_log_shift=shift, cook_log_sd=prior_sd * (1 - gain) ** 0.5)


def pace(learned: Learned) -> float:
    """How many times the usual hours this person's cooker takes. [-]"""
    return exp(learned.cook_log_shift)
