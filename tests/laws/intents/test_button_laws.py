"""Laws of a button: what it carries comes back as it went, in 64 bytes; anything else is nothing."""

from datetime import UTC, datetime, timedelta
from uuid import uuid4

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.intents.buttons import LIMIT_BYTES, TooWide, from_payload, payload
from bot.intents.intents import (
    Ask,
    Cancel,
    Change,
    Choose,
    Debrief,
    Greet,
    Intent,
    MoveDeadline,
    Pause,
    Reading,
    Resume,
    Snooze,
    StepDone,
    StepMissed,
    StepSkipped,
    Temperature,
    Undo,
)
from core.batch.events import Probe
from core.plan.steps import Kind

batches = st.none() | st.text("0123456789abcdef", min_size=1, max_size=12)
steps = st.none() | st.sampled_from([str(kind) for kind in Kind]) | st.just("fridge_check/12")
times = st.none() | st.integers(1_700_000_000, 4_000_000_000).map(lambda s: datetime.fromtimestamp(s, UTC))
spans = st.none() | st.integers(-1_000_000, 1_000_000).map(lambda s: timedelta(seconds=s))
fractions = st.integers(1, 9999).map(lambda n: n / 10000)
lengths = st.integers(1, 3000).map(lambda n: n / 10000)
changes = st.one_of(
    fractions.map(lambda v: {"cure_nitrite_fraction": v}),
    st.sampled_from(("brine", "dry", "inject")).map(lambda v: {"method": v}),
    lengths.map(lambda v: {"thickness": v}),
    st.sampled_from(("none", "paper", "foil")).map(lambda v: {"wrap": v}),
    st.sampled_from(("foil", "rack", "fan", "ice")).map(lambda v: {"chill": v}),
    st.sampled_from(("cold", "thin", "hot", "pulled")).map(lambda v: {"purpose": v}),
    st.booleans().map(lambda v: {"at_risk_eaters": v}),
    times.map(lambda v: {"deadline": v}),
    st.integers(80, 180).map(lambda v: {"pit_c": float(v)}),
    st.integers(0, 1).map(lambda v: {"sealed_faces": v}),
)
intents = st.one_of(
    st.builds(
        StepDone, step=steps, at=times, detail=st.sampled_from(("", "foil")), also_previous=st.booleans(), batch=batches
    ),
    st.builds(StepSkipped, step=steps, batch=batches),
    st.builds(Snooze, until=times, by=spans, step=steps, batch=batches),
    st.builds(StepMissed, step=steps, at=times, whole_day=st.booleans(), batch=batches),
    st.builds(Change, changes=changes, batch=batches),
    st.builds(
        Choose,
        slot=st.sampled_from(("cure", "probe", "batch", "confirm", "mass_unit")),
        value=st.one_of(st.booleans(), fractions, times, st.sampled_from(("core/f", "kg", "b1")), st.integers(0, 99)),
        batch=batches,
    ),
    st.builds(
        Ask,
        topic=st.sampled_from(("now", "plan", "why", "picture")),
        about=st.sampled_from(("", "days", "cook")),
        batch=batches,
    ),
    st.builds(Undo, batch=batches),
    st.builds(Cancel, batch=batches, sure=st.booleans()),
    st.builds(Pause, until=times, batch=batches),
    st.builds(Resume, batch=batches),
    st.builds(
        Reading,
        temperatures=st.lists(
            st.builds(
                Temperature,
                value=st.integers(-20, 9000).map(lambda n: n / 10),
                unit=st.sampled_from((None, "c", "f")),
                probe=st.none() | st.sampled_from(Probe),
                at=times,
            ),
            min_size=1,
            max_size=2,
        ).map(tuple),
        tender=st.booleans(),
        batch=batches,
    ),
    st.builds(MoveDeadline, to=times, by=spans, batch=batches),
    st.builds(
        Debrief,
        mass=st.none() | lengths,
        grey=st.none() | lengths,
        salt=st.sampled_from((None, -1, 0, 1)),
        batch=batches,
    ),
)


@given(intents)
def test_a_button_means_what_it_was_made_to_mean(intent: Intent) -> None:
    """There and back is the same intent, and fits what the Bot API allows."""
    text = payload(intent)
    assert 1 <= len(text.encode()) <= LIMIT_BYTES  # Bot API, callback_data: 1 to 64 bytes
    assert from_payload(text) == intent


@given(st.text(max_size=80))
def test_a_foreign_payload_is_nothing(text: str) -> None:
    """Whatever comes back from elsewhere is an intent of ours or None; it never raises."""
    found = from_payload(text)
    assert found is None or payload(found)


@given(intents, st.integers(0, 63), st.characters())
def test_a_broken_payload_never_raises(intent: Intent, place: int, character: str) -> None:
    """A payload with one character changed is read as some intent or as None."""
    text = payload(intent)
    from_payload(text[:place] + character + text[place + 1 :])


@pytest.mark.parametrize(
    "text",
    ["", "1", "2|u||", "0|u||", "1|?||", "1|u|", "1|c||zzn", "1|c||thf1e999", "1|c||thfnan", "1|z||~~~~", "1|x||yes",
     "1|d||" + "a" * 80, "1|p||99999999999999999999", "done", "1|b||n~n~n"],
)  # fmt: skip
def test_payloads_that_mean_nothing(text: str) -> None:
    """Other versions, other verbs, missing parts and numbers that are none."""
    assert from_payload(text) is None


@pytest.mark.parametrize("batch", [uuid4().hex, "b" * 32])
def test_the_longest_ordinary_button_fits(batch: str) -> None:
    """A step done in a batch with a 32-character id still fits."""
    assert from_payload(payload(StepDone("fridge_check/12", batch=batch))) == StepDone("fridge_check/12", batch=batch)


@pytest.mark.parametrize(
    "intent",
    [Greet(), Change({"method": "dry", "wrap": "foil"}), Change({"no_such": 1}), Choose("slot", [1]), Undo("x" * 80)],
)
def test_what_no_button_can_carry_is_a_fault_of_ours(intent: Intent) -> None:
    """Two fields at once, an unknown field, a list, or too long an id: raised when the button is made."""
    with pytest.raises(TooWide):
        payload(intent)
