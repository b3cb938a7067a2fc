"""Laws of a household: whatever was handed to whom, a call reaches somebody, and a safety call in the end everybody."""

from datetime import UTC, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from core.batch.events import Handed
from core.plan.reminders import Wanted
from core.plan.steps import Kind, Urgency
from core.service.duties import TASKS, shared
from core.store.members import Member

NOW = datetime(2027, 9, 24, 8, 0, tzinfo=UTC)
CHATS = ("bo", "ida", "jo")
moments = st.integers(-72, 72).map(lambda hours: NOW + timedelta(hours=hours))
handings = st.builds(
    Handed,
    task=st.sampled_from((*TASKS, "all")),
    since=moments,
    name=st.sampled_from(("Bo", "Jo", "")),
    chat=st.sampled_from(("", *CHATS)),
)
wishes = st.builds(
    Wanted,
    step=st.sampled_from([f"{kind.value}/1" for kind in Kind]),
    kind=st.just("flip"),
    due_at=moments,
    urgency=st.sampled_from(list(Urgency)),
    occurrence=st.integers(0, 2),
)
sharings = st.lists(st.sampled_from(CHATS), unique=True).flatmap(
    lambda chats: st.tuples(*(st.builds(Member, st.just("b"), st.just(chat), st.just(chat), moments) for chat in chats))
)


@given(st.lists(wishes, max_size=6), st.lists(handings, max_size=5), sharings)
def test_every_call_reaches_somebody(asked: list[Wanted], handed: list[Handed], sharing: tuple[Member, ...]) -> None:
    """No step is lost, none comes twice to one chat, and none goes to a chat that neither has it nor took it over."""
    found = shared(asked, handed, sharing)
    of_step = [(one.step, one.due_at, one.occurrence) for one in found]
    assert {(one.step, one.due_at, one.occurrence) for one in asked} == set(of_step)
    known = {"", *(member.chat for member in sharing), *(one.chat for one in handed)}
    assert {one.chat for one in found} <= known
    if len(asked) == 1:
        assert len({one.chat for one in found}) == len(found)


@given(wishes, st.lists(handings, max_size=5), sharings)
def test_what_nobody_answered_goes_to_everybody(
    wish: Wanted, handed: list[Handed], sharing: tuple[Member, ...]
) -> None:
    """A repeat reaches the chat of the batch and every other that has had it since then, whoever took it over."""
    chats = {one.chat for one in shared([wish], handed, sharing)}
    if wish.occurrence:
        assert {"", *(m.chat for m in sharing if m.since <= wish.due_at)} <= chats


@given(wishes, sharings)
def test_without_a_handing_it_is_everybodys(wish: Wanted, sharing: tuple[Member, ...]) -> None:
    """Nobody took anything over: the chat of the batch and the others, once each."""
    chats = [one.chat for one in shared([wish], (), sharing)]
    assert sorted(chats) == sorted(["", *(m.chat for m in sharing if m.since <= wish.due_at)])
